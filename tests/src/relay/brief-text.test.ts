import { describe, expect, it } from 'vitest';
import { attachmentsText, briefLines, briefTitle } from '../../../src/relay/brief-text.ts';
import type { Brief } from '../../../src/thread/thread.ts';
import { adasBrief, NOBODY } from '../../helpers/a-brief.ts';

const brief = (more: Partial<Brief> = {}): Brief => adasBrief({ question: 'the fridge clicks', ...more });
const text = (kind: string, more: Partial<Brief> = {}, urgency: 'danger' | 'urgent' | 'usual' = 'usual') =>
  briefLines(brief(more), urgency).find((line) => line.kind === kind)?.text;

describe('a brief in words', () => {
  it('says first whose business it is', () => {
    expect(text('why', { reason: 'staff-only', tell: 'Nessa' })).toBe('For Nessa. Only the yard can settle this.');
    expect(text('why', { reason: 'staff-only', tell: null })).toBe('Only the yard can settle this.');
  });

  it('says who, why, what and whom to ring, in that order', () => {
    expect(briefLines(brief(), 'usual').map((line) => line.text)).toEqual([
      'Ada · Dunlin · Sandwick Head, pitch 14 · 3 nights left · 10 A hook-up · BR-2702',
      'The bot was not sure.',
      '“the fridge clicks”',
      'Ring: 01632 960111',
    ]);
  });

  it('says what the bot understood and how surely, what was tried, what came with it and the answer at hand', () => {
    const understood = [
      { topic: 'a', title: 'Fridge not cold', probability: 0.623 },
      { topic: 'b', title: 'Fridge door', probability: 0.2 },
    ];
    const attachments = [
      { kind: 'photo' as const, file: '1' },
      { kind: 'photo' as const, file: '2' },
      { kind: 'voice' as const, file: '3' },
    ];
    const lines = briefLines(
      brief({ understood, tried: ['Dial to gas - no', 'Reset - no'], attachments, suggested: 'Turn it.' }),
      'usual',
    );
    expect(lines.map((line) => `${line.kind}: ${line.text}`).slice(2)).toEqual([
      'question: “the fridge clicks”',
      'with: With it: 2 photos, a voice message',
      'understood: Understood: Fridge not cold (62 %), Fridge door (20 %)',
      'tried: Tried: Dial to gas - no; Reset - no',
      'phone: Ring: 01632 960111',
      'suggested: Turn it.',
    ]);
  });

  it('puts a danger first, in a word', () => {
    expect(briefLines(brief({ reason: 'safety', hazard: 'safety-gas-smell' }), 'danger')[0]).toEqual({
      kind: 'alarm',
      text: 'DANGER: gas smell',
    });
    expect(text('alarm', {}, 'urgent')).toBe('Cannot wait');
    expect(text('alarm')).toBeUndefined();
  });

  it('leaves out what is not known and says what is known to be missing', () => {
    expect(text('who', NOBODY)).toBe('No booking yet');
    expect(text('phone', NOBODY)).toBeUndefined();
    expect(text('who', { amps: 0, nightsLeft: 1 })).toContain('1 night left · no hook-up');
    expect(text('who', { nightsLeft: 0 })).toContain('goes home today');
    expect(text('who', { nightsLeft: -1 })).toContain('hire is over');
    expect(text('question', { question: ' ' })).toBeUndefined();
  });

  it('names the language when it is not English', () => {
    expect(text('why', { reason: 'language', language: 'de' })).toBe('Writes in German; the bot cannot answer in it.');
    expect(text('why', { reason: 'asked', language: 'fr' })).toBe('Asked for a person. Writes in French.');
    expect(text('why', { reason: 'language', language: 'not a code' })).toContain('not a code');
  });

  it('cuts long texts between words so that a brief fits into one message', () => {
    const long = 'word '.repeat(2000);
    const lines = briefLines(brief({ question: long, tried: [long], suggested: '😀'.repeat(2000) }), 'danger');
    expect(lines.map((line) => line.text).join('\n').length).toBeLessThan(4096);
    expect(lines.find((line) => line.kind === 'question')?.text).toMatch(/word …”$/);
    expect(lines.find((line) => line.kind === 'suggested')?.text).not.toMatch(/[\uD800-\uDBFF](?![\uDC00-\uDFFF])/);
  });

  it('names a conversation by van and first name', () => {
    expect(briefTitle({ van: 'Dunlin', firstName: 'Ada' })).toBe('Dunlin, Ada');
    expect(briefTitle({ van: 'Dunlin', firstName: null })).toBe('Dunlin');
    expect(briefTitle({ van: null, firstName: null })).toBe('Somebody without a booking');
  });

  it('counts what came with it', () => {
    expect(
      attachmentsText([
        { kind: 'location', latitude: 1, longitude: 2 },
        { kind: 'contact', name: 'A', phone: '1' },
      ]),
    ).toBe('where they are, a phone number');
  });
});
