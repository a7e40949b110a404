import { z } from 'zod';
import type { SiteId, VanId } from '../basics/ids.ts';
import { addDays } from '../basics/time.ts';
import type { People } from './message.ts';

/** The firm's sites by id. */
export type SiteNames = Readonly<Record<SiteId, { readonly name: string }>>;

/** What each field should look like, as told to the person who mends the file. */
export const EXPECTED: Readonly<Record<string, string>> = {
  ref: 'letters, digits and dashes, such as BR-2702',
  hirer: 'a name',
  people: 'such as 2 adults, 2 children (9, 12), 1 dog',
  amps: 'a whole number from 0 (no hook-up) to 63, or nothing',
  from: 'year-month-day, such as 2027-07-24',
  to: 'year-month-day, such as 2027-07-31',
  phone: 'a phone number, or nothing',
};

/** Why a text is not a value. */
class Wrong {
  readonly why: string;
  constructor(why: string) {
    this.why = why;
  }
}

/** One record, each field trimmed and read; every wrong field is an issue with its name as the path. */
export function bookingFields(vans: readonly VanId[], sites: SiteNames) {
  return z.object({
    ref: field(readRef),
    hirer: field(readName),
    people: field(readPeople),
    van: field((text) => readVan(vans, text)),
    site: field((text) => readSite(sites, text)),
    amps: field(readAmps),
    from: field(readDay),
    to: field(readDay),
    phone: field(readPhone),
    note: field((text) => text),
  });
}

function field<T>(read: (text: string) => T | Wrong) {
  return z.string().transform((text, context): T => {
    const value = read(text.trim());
    if (!(value instanceof Wrong)) return value;
    context.addIssue({ code: 'custom', message: value.why });
    return z.NEVER;
  });
}

/** In capitals, so that br-2702 and BR-2702 are one booking. */
function readRef(text: string): string | Wrong {
  if (text === '') return new Wrong('is empty');
  return /^[a-z0-9][a-z0-9-]{0,31}$/i.test(text) ? text.toUpperCase() : new Wrong(`'${text}' is not a reference`);
}

function readName(text: string): string | Wrong {
  return text === '' ? new Wrong('is empty') : text;
}

const PARTY = /(\d+)\s*(adult|child|dog)(?:s|ren)?\b(?:\s*\(([^)]*)\))?/gi;
const MOST_OF_A_KIND = 20;

/** '2 adults, 2 children (9, 12), 1 dog' in any order; every child with its age. */
function readPeople(text: string): People | Wrong {
  if (text === '') return new Wrong('is empty');
  const found = new Map<string, { readonly count: number; readonly ages: readonly number[] }>();
  for (const [, number = '', kind = '', inside] of text.matchAll(PARTY)) {
    const name = kind.toLowerCase();
    const ages = (inside ?? '').split(',').map((age) => age.trim());
    if (found.has(name)) return new Wrong(`'${text}' counts each ${name} twice`);
    if (inside !== undefined && (name !== 'child' || !ages.every(isAge)))
      return new Wrong(`'(${inside})' are not children's ages`);
    found.set(name, { count: Number(number), ages: inside === undefined ? [] : ages.map(Number) });
  }
  const rest = text
    .replace(PARTY, ' ')
    .replace(/\band\b/gi, ' ')
    .replace(/[,&\s]/g, '');
  if (rest !== '') return new Wrong(`'${text}' is not a party of adults, children and dogs`);
  const adults = found.get('adult')?.count ?? 0;
  const children = found.get('child') ?? { count: 0, ages: [] };
  const dogs = found.get('dog')?.count ?? 0;
  if (adults === 0) return new Wrong(`'${text}' has no adult`);
  if (Math.max(adults, children.count, dogs) > MOST_OF_A_KIND) return new Wrong(`'${text}' is more than any van holds`);
  if (children.count !== children.ages.length) {
    return new Wrong(`'${text}' has ${children.count} children and ${children.ages.length} ages`);
  }
  return { adults, children: children.ages, dogs };
}

function isAge(text: string): boolean {
  return /^\d{1,2}$/.test(text) && Number(text) < 18;
}

function readVan(vans: readonly VanId[], text: string): VanId | Wrong {
  if (text === '') return new Wrong('is empty');
  const id = text.toLowerCase();
  return vans.includes(id) ? id : new Wrong(`there is no van '${text}'`);
}

/** 'Touring' and nothing at all both mean that the hirer is on no site of ours. */
function readSite(sites: SiteNames, text: string): SiteId | null | Wrong {
  const name = text.toLowerCase();
  if (name === '' || name === 'touring') return null;
  const found = Object.entries(sites).find(([id, site]) => id === name || site.name.toLowerCase() === name);
  return found?.[0] ?? new Wrong(`there is no site '${text}'`);
}

function readAmps(text: string): number | null | Wrong {
  if (text === '') return null;
  const [, digits] = /^(\d{1,2})\s*(?:a|amps?)?$/i.exec(text) ?? [];
  const amps = Number(digits);
  return digits === undefined || amps > 63 ? new Wrong(`'${text}' is not a number of amps`) : amps;
}

function readDay(text: string): string | Wrong {
  if (text === '') return new Wrong('is empty');
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return new Wrong(`'${text}' is not written year-month-day`);
  return isDay(text) ? text : new Wrong(`there is no day ${text}`);
}

/** The 30th of February would otherwise roll over into March, or be no number at all. */
function isDay(text: string): boolean {
  return !Number.isNaN(Date.parse(`${text}T00:00:00Z`)) && addDays(text, 0) === text;
}

function readPhone(text: string): string | null | Wrong {
  if (text === '') return null;
  const digits = text.replace(/\D/g, '').length;
  const isPhone = /^\+?[\d\s()./-]+$/.test(text) && digits >= 5 && digits <= 15;
  return isPhone ? text : new Wrong(`'${text}' is not a phone number`);
}
