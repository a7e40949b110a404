import { describe, expect, it } from 'vitest';
import type { SafetyData } from '../../../src/knowledge/safety-schema.ts';
import { type NoticeOptions, noticeOf } from '../../../src/safety/notice.ts';

const TEXT = {
  first: 'Out now.',
  steps: ['Call {emergency}.', 'Ring {firm} about {van}.'],
  after: 'Until a competent person has said so.',
};

function aSafety(german: { read_by: string | null } = { read_by: null }): Pick<SafetyData, 'notices' | 'shared'> {
  return {
    notices: {
      'safety-fire': {
        level: 'danger',
        calls: ['emergency', 'gas-emergency'],
        asks: ['everyone-out'],
        texts: {
          en: { ...TEXT, read_by: null },
          de: {
            first: 'Raus.',
            steps: ['{emergency}.', '{firm}.'],
            after: 'Bis jemand Sachkundiges es sagt.',
            ...german,
          },
        },
      },
    },
    shared: {
      local: { en: 'Local rules first.', de: 'Regeln vor Ort zuerst.' },
      closed: { en: 'Nobody at {firm} before {opens}; call {emergency}.', de: 'Niemand bei {firm} vor {opens}.' },
      english_below: { en: 'In English:' },
      calls: {
        emergency: { en: 'Emergency', de: 'Notruf' },
        firm: { en: '{firm}' },
        'on-call': { en: '{firm}, on call' },
      },
      checked: { en: 'checked {day}' },
      asks: { 'everyone-out': { en: 'All out?' }, 'anyone-ill': { en: 'Ambulance?' }, where: { en: 'Where?' } },
      answers: { yes: { en: 'yes' }, no: { en: 'no' } },
    },
  };
}

const FIRM: NoticeOptions['firm'] = {
  name: 'Brackenfold',
  phone: '01632 960147',
  onCallPhone: '07700 900318',
  numbers: {
    GB: [
      {
        id: 'emergency',
        label: '999 or 112',
        labels: { de: '999 oder 112' },
        number: '999',
        for: 'danger',
        checked: null,
      },
      { id: 'gas-emergency', label: 'Gas line', number: '0800 111 999', for: 'gas', checked: '2027-05-01' },
    ],
    '*': [{ id: 'emergency', label: '112', number: '112', for: 'danger', checked: null }],
  },
};

function notice(over: Partial<NoticeOptions> = {}) {
  const options: NoticeOptions = {
    safety: aSafety(),
    firm: FIRM,
    language: 'en',
    country: 'GB',
    vanName: 'Wren',
    answers: { kind: 'office' },
    ...over,
  };
  return noticeOf('safety-fire', options);
}

describe('a notice', () => {
  it('has the action first, its slots filled, and the numbers of the country', () => {
    expect(notice()).toEqual({
      hazard: 'safety-fire',
      level: 'danger',
      language: 'en',
      first: 'Out now.',
      steps: ['Call 999 or 112.', 'Ring Brackenfold about Wren.'],
      after: 'Until a competent person has said so.',
      closed: null,
      calls: [
        { label: 'Emergency', number: '999' },
        { label: 'Gas line (checked 2027-05-01)', number: '0800 111 999' },
        { label: 'Brackenfold', number: '01632 960147' },
      ],
      local: 'Local rules first.',
      english: null,
    });
  });

  it('shows elsewhere what works elsewhere', () => {
    const abroad = notice({ country: 'FR' });
    expect(abroad?.steps[0]).toBe('Call 112.');
    expect(abroad?.calls.map((call) => call.number)).toEqual(['112', '01632 960147']);
  });

  it('gives the on-call number while somebody is on call', () => {
    expect(notice({ answers: { kind: 'on-call' } })?.calls.at(-1)).toEqual({
      label: 'Brackenfold, on call',
      number: '07700 900318',
    });
  });

  it('says that nobody answers until it opens, and gives no number of the firm then', () => {
    const closed = notice({ answers: { kind: 'closed', opens: '08:30' } });
    expect(closed?.closed).toBe('Nobody at Brackenfold before 08:30; call 999 or 112.');
    expect(closed?.calls.map((call) => call.number)).toEqual(['999', '0800 111 999']);
  });

  it('stands in the language of the message, with the English under it until a native speaker has signed', () => {
    expect(notice({ language: 'de' })).toMatchObject({
      first: 'Raus.',
      local: 'Regeln vor Ort zuerst.',
      english: { heading: 'In English:', first: 'Out now.' },
    });
    expect(notice({ language: 'de', safety: aSafety({ read_by: 'Anja' }) })?.english).toBeNull();
  });

  it('names the emergency numbers in the words of its language, and in English under it', () => {
    const german = notice({ language: 'de', answers: { kind: 'closed', opens: '08:30' } });
    expect(german?.steps.join(' ')).toContain('999 oder 112');
    expect(german?.english?.steps[0]).toBe('Call 999 or 112.');
  });

  it('is English in a language it has not', () => {
    expect(notice({ language: 'fi' })).toMatchObject({ language: 'en', first: 'Out now.', english: null });
  });

  it('still names the emergency number when the firm’s file cannot be read', () => {
    expect(notice({ firm: null, country: null })).toMatchObject({
      steps: ['Call 999 or 112.', 'Ring us about Wren.'],
      calls: [{ label: 'Emergency', number: '999 or 112' }],
    });
    expect(notice({ firm: null, country: 'FR' })?.steps[0]).toBe('Call 112.');
  });

  it('is null for a hazard nobody knows', () => {
    expect(
      noticeOf('safety-dragon', {
        safety: aSafety(),
        firm: FIRM,
        language: 'en',
        country: 'GB',
        vanName: null,
        answers: { kind: 'office' },
      }),
    ).toBeNull();
  });
});
