import { describe, expect, it } from 'vitest';
import { createTongues } from '../../../src/safety/tongues.ts';
import { aReading } from './small-reading.ts';

const tongues = createTongues(aReading());
const codes = (text: string) => tongues(text).map(({ code }) => code);

describe('the languages a text may be in', () => {
  it('reads English by English alone', () => {
    expect(codes('there is a smell of gas in here')).toEqual(['en']);
  });

  it('reads another language first by its own words', () => {
    expect(codes('es riecht hier im Wohnwagen nach Gas')).toEqual(['de', 'en']);
  });

  it('looks a short cry up in all languages', () => {
    expect(codes('FEUERRR')).toEqual(['en', 'de']);
    expect(codes('fire')).toEqual(['en']);
    expect(codes('glimmet will not open')).toEqual(['en']);
    expect(codes('glimmet wont open')).toEqual(['en']);
  });

  it('needs English', () => {
    expect(() => createTongues(aReading({ tongues: {} }))).toThrow('the safety reading has no en');
  });
});
