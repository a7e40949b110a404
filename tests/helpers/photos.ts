/** A small spruce square as a PNG that a browser draws. Asked for more bytes, it is filled up after its end. */
export function aPhoto(bytes = 0): Uint8Array<ArrayBuffer> {
  const png = Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAgAAAAICAIAAABLbSncAAAAEUlEQVR4nGMQMdLEihiGlgQA0x4bwaPv2RwAAAAASUVORK5CYII=',
    'base64',
  );
  const whole = new Uint8Array(Math.max(bytes, png.length));
  whole.set(png);
  return whole;
}

/** The least that is known by its first bytes. */
export function aFile(kind: 'photo' | 'voice' | 'video' | 'file'): Uint8Array<ArrayBuffer> {
  const heads = { voice: 'OggS\0\u0002', video: '\0\0\0\u0018ftypisom\0\0\u0002\0', file: '%PDF-1.7\n' };
  return kind === 'photo' ? aPhoto() : new TextEncoder().encode(heads[kind]);
}
