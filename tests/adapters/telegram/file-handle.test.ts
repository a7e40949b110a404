import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { copyHandle, FILE_WAYS, fileHandle, readHandle } from '../../../adapters/telegram/file-handle.ts';

describe('the handle of a file on Telegram', () => {
  it('reads back as it was written', () => {
    fc.assert(
      fc.property(fc.constantFrom(...FILE_WAYS), fc.string({ minLength: 1 }), (way, fileId) => {
        expect(readHandle(fileHandle(way, fileId))).toEqual({ way, fileId });
      }),
    );
    expect(readHandle(copyHandle(-1001, 7))).toEqual({ way: 'copy', chat: -1001, message: 7 });
  });

  it('is null for what is another channel’s or no handle', () => {
    for (const file of ['', 'upload:1', 'tg:', 'tg:photo:', 'tg:drawing:1', 'tg:copy:1', 'tg:copy:a:b'])
      expect(readHandle(file)).toBeNull();
  });
});
