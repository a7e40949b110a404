import { z } from 'zod';
import { ID_PATTERN } from '../basics/ids.ts';

/*
 * The shape of every file under graph/. All objects are strict: a key that is not known is a slip, so that a
 * misspelt key never silently means nothing. Docstrings say what a field is for; graph/ is written by people.
 */

export const id = z.string().regex(ID_PATTERN, 'a kebab-case id, such as water-pump');

/**
 * When a clause holds: a part or role the van has ('fridge-rotary'), the same refused ('!water-heater'), a van
 * ('van:wren', '!van:wren'), 'site' when the booking's site is known, or a list of which all must hold.
 */
export const when = z.union([
  z.string().regex(/^!?(van:)?[a-z0-9]+(-[a-z0-9]+)*$/, "a part id, '!part', 'van:name' or '!van:name'"),
  z.array(z.string().regex(/^!?(van:)?[a-z0-9]+(-[a-z0-9]+)*$/)).min(1),
]);
export const clause = z.union([z.string().min(1), z.strictObject({ when: when.optional(), say: z.string().min(1) })]);
/** One text, or clauses of which the first that holds is said. */
export const says = z.union([z.string().min(1), z.array(clause).min(1)]);

/** A drawing, the id of the part of it to ring, and the alternative text. */
export const pictureUse = z.strictObject({
  when: when.optional(),
  picture: id,
  touch: z.string().optional(),
  alt: z.string().min(1),
});

/** The parts of an answer, read in this order. Slots such as {fridge.fuse} are filled from the booked van's file. */
export const answer = z.strictObject({
  /** The answer itself, in one or two short sentences. */
  first: says,
  /** Numbered steps, one action each; at most seven hold for any van. All clauses that hold are said. */
  steps: z.array(clause).default([]),
  /** Facts, as a list without numbers. All clauses that hold are said. */
  facts: z.array(clause).default([]),
  caution: says.optional(),
  /** What to do if that does not work. */
  otherwise: says.optional(),
  pictures: z.array(pictureUse).default([]),
  /** Lists places near the booking's site, nearest first, with distance, hours and whether open now. */
  places: z.strictObject({ kinds: z.array(id).min(1), most: z.number().int().min(1).max(6) }).optional(),
});

export const KINDS = ['how-to', 'where', 'fact', 'symptom', 'calculation', 'hazard', 'hire-rule'] as const;

const chance = z.number().gt(0).lte(1);
const minutes = z.number().gt(0).max(1440);

/** A cause of a symptom, with the check that tells it and the fix that cures it. */
export const cause = z.strictObject({
  id,
  say: z.string().min(1),
  /** The part the cause is of: the cause is in scope when the part is. Left out: it can happen in any van. */
  of: id.optional(),
  /** The chance that this is it when the symptom shows; one number, or one for each van it can happen in. */
  prior: z.union([chance, z.record(id, chance)]),
  check: z
    .strictObject({
      /** Worded so that yes points to this cause. */
      ask: says,
      /** How to see it, for 'how do I see that?'. */
      look: says.optional(),
      minutes,
      /** The chance that the answer is mistaken; 0.05 when left out. */
      wrong: z.number().min(0).max(0.5).optional(),
      /** Other causes of this symptom to which the answer is yes as well. */
      also: z.array(id).default([]),
      /** Doing it resets the main safety switch: counts toward the two of a walk. */
      reset: z.boolean().default(false),
      pictures: z.array(pictureUse).default([]),
    })
    .optional(),
  fix: z.strictObject({
    do: says,
    minutes,
    /** With 'staff', `do` is what the hirer does meanwhile. */
    who: z.enum(['hirer', 'staff']),
    /** The chance that it cures, if this is the cause. */
    success: chance,
    /** Resets the main safety switch: at most two in one walk, checks counted in. */
    reset: z.boolean().default(false),
    /** Replaces the fuse named: once in one walk. */
    fuse: z.boolean().default(false),
    /** Gets the hirer going but leaves something for the workshop to look at. */
    trick: z.boolean().default(false),
    pictures: z.array(pictureUse).default([]),
  }),
  /** Beats everything else: when the hirer says this, the walk stops and people take over. */
  stop: z.string().optional(),
});

export const topic = z.strictObject({
  kind: z.enum(KINDS),
  title: z.string().min(1),
  /** Parts or roles. In scope when the van has every one of them; none: always in scope. */
  about: z.array(id).default([]),
  caution: z.enum(['none', 'caution', 'hazard']),
  pass: z.enum(['never', 'if-not-fixed', 'always']),
  /** True for the hazards whose text is a notice in safety.yaml, shown when it is happening. */
  notice: z.boolean().default(false),
  /** Hazard topics to bear in mind with this one. */
  warns: z.array(id).default([]),
  /** Topics that hirers often want next or instead. */
  kin: z.array(id).default([]),
  /** The calculator that answers it; its `answer` then says what is worked out and how. */
  calculator: id.optional(),
  answer: answer.optional(),
  /** Symptoms only: at least one cause for each van in scope, or none at all. */
  causes: z.array(cause).default([]),
  /** How hirers put it, by who wrote it. */
  wordings: z.record(id, z.array(z.string().min(1))).default({}),
});

export const control = z.strictObject({
  name: z.string().min(1),
  also: z.array(z.string().min(1)).default([]),
});

export const part = z.strictObject({
  name: z.string().min(1),
  /** The role this part is a variant of: 'fridge' for a rotary 3-way fridge. Roles are parts themselves. */
  is: id.optional(),
  /** The part it belongs to: a van that has that part has this one as well. */
  of: id.optional(),
  /** What else people call it. */
  also: z.array(z.string().min(1)).default([]),
  /** Things to press, turn or read on it. */
  controls: z.record(id, control).default({}),
});

export const system = z.strictObject({
  system: id,
  title: z.string().min(1),
  parts: z.record(id, part).default({}),
  topics: z.record(id, topic).default({}),
});

const positive = z.number().gt(0);

const source = z.strictObject({
  id,
  name: z.string(),
  /** Heat output in watts. */
  watts: positive,
  kind: z.enum(['electric', 'gas', 'diesel', 'engine']),
});

/** The van's own numbers for the sums: design.md section 8's home. Units stand in the names. */
export const figures = z.strictObject({
  trackM: positive,
  /** Campervans level front to back over the wheelbase. */
  wheelbaseM: positive.optional(),
  mtplmKg: positive,
  readyKg: positive,
  noseweight: z.strictObject({ lowKg: positive, highKg: positive, limitKg: positive }).optional(),
  mains: z.strictObject({
    backgroundW: z.number().min(0),
    /** What the charger takes more after a flat battery. */
    flatChargeW: positive.optional(),
    breakers: z.array(z.strictObject({ id, name: z.string(), amps: positive, feeds: z.array(id).min(1) })).min(1),
    /** What the van has that draws on the hook-up. `missed`: how much it is missed when switched off, 1 least. */
    loads: z.record(
      id,
      z.strictObject({
        name: z.string(),
        watts: positive,
        circuit: id,
        also: z.array(z.string()).default([]),
        missed: z.number().int().min(1).max(9).default(5),
      }),
    ),
    /** Electric heating steps in watts, lowest first. */
    heatingStepsW: z.array(positive).default([]),
    inverterW: positive.optional(),
  }),
  battery: z.strictObject({
    type: z.enum(['flooded', 'agm', 'lithium']),
    nominalAh: positive,
    usableShare: chance,
    ageFactor: chance,
    summerDayAh: positive,
    coldDayAh: positive,
    loadsW: z.record(id, z.number().gt(0)),
    fridgeAhPerDay: z.strictObject({ at10C: positive, at20C: positive, at30C: positive }).optional(),
    inverterEfficiency: chance.optional(),
    driveAhPerHour: positive.optional(),
  }),
  solarW: positive.optional(),
  gas: z
    .strictObject({
      kind: z.enum(['propane', 'butane']),
      carriedKg: positive,
      /** For months in which the van carries another gas. */
      winter: z
        .strictObject({
          kind: z.enum(['propane', 'butane']),
          carriedKg: positive,
          months: z.array(z.number().int().min(1).max(12)),
        })
        .optional(),
      cylinders: z.number().int().min(1),
      hobOnly: z.boolean().default(false),
      inside: z.boolean().default(false),
      fridgeGPerDay: positive.optional(),
    })
    .optional(),
  heating: z.strictObject({
    lossWPerK: positive,
    lossRoofUpWPerK: positive.optional(),
    storeKWhPerK: positive,
    /** Extra minutes until the far end is warm. */
    lagMinutes: z.number().min(0).default(0),
    sources: z.array(source).min(1),
  }),
  hotWater: z
    .strictObject({
      litres: positive,
      maxC: positive,
      efficiencyElectric: chance,
      efficiencyGas: chance,
      tankGasG: positive.optional(),
      sources: z.array(source).min(1),
      engineMinutes: positive.optional(),
      shower: z.boolean(),
    })
    .optional(),
  water: z.strictObject({ freshL: positive, wasteL: positive, flushFromFreshL: z.number().min(0) }),
  toilet: z.strictObject({ cassetteL: positive, litresPerPersonDay: positive }),
  awningKg: positive.optional(),
  peopleCount: z.boolean().default(false),
});

/** How far north a site lies, for the sun: beyond 53 N, 50-53 N, south of that. */
const sunBand = z.enum(['north', 'middle', 'south']);
export type SunBand = z.infer<typeof sunBand>;

/** What the firm takes as given in the sums, and where it comes from. */
export const constants = z.strictObject({
  volts: positive,
  /** The lowest that a supply may lawfully give. */
  voltsLow: positive,
  /** The lead that goes with the vans: copper, one conductor's resistance at 20 C. */
  lead: z.strictObject({ metres: positive, ohmPerKm: positive }),
  netCalorificKWhPerKg: positive,
  usableCylinderShare: chance,
  cookingGPerPersonDay: positive,
  heatingEfficiency: chance,
  solarFactor: chance,
  sunHours: z.record(sunBand, z.array(positive).length(12)),
  shadedShare: chance,
  outsideC: z.array(z.number()).length(12),
  usual: z.strictObject({ tanksADay: positive, heatingHours: positive, insideC: positive, breathingHours: positive }),
  heatsBelowC: z.number(),
  addGasBelowC: z.number(),
  goodSupplyW: positive,
  safeStepW: positive,
  usualGasW: positive,
  drawnHotShare: chance,
  hotC: positive,
  coldWaterC: z.strictObject({ summer: z.number(), winter: z.number() }),
  waterHeatKJPerLK: positive,
  heatStartMinutes: z.number().min(0),
  showerLPerMinute: positive,
  showerC: positive,
  litresPerPersonDay: z.strictObject({
    drink: positive,
    washingUp: positive,
    hands: positive,
    flush: positive,
    shower: positive,
  }),
  wasteShare: chance,
  rampStepsMm: z.array(positive).min(1),
  levelWithinDegrees: z.strictObject({ comfort: positive, fridge: positive }),
  batteryVolts: positive,
  peukert: z.strictObject({ flooded: positive, agm: positive, lithium: positive }),
  /** From this many times the current of a 20-hour discharge Peukert's loss is counted. */
  peukertFromTimes: positive,
  /** Volts of a rested battery at 0, 25, 50, 75 and 100 per cent, rising. */
  restVolts: z.strictObject({ flooded: z.array(positive).length(5), agm: z.array(positive).length(5) }),
  /** Above this a battery is on charge. */
  chargingVolts: positive,
  /** Degrees of the cylinder above or from which butane serves: anything, a hob, weakly. */
  butaneC: z.strictObject({ anything: z.number(), hob: z.number(), weak: z.number() }),
  /** What a regulator needs over the air's pressure. */
  regulatorBar: positive,
  /** Of what a microwave takes from the mains, the share that is sold as its watts, and the most it is sold as. */
  microwave: z.strictObject({ outputShare: chance, mostOutputW: positive }),
  things: z.record(
    id,
    z.strictObject({
      name: z.string(),
      also: z.array(z.string()).default([]),
      watts: positive.optional(),
      /** Its watts differ so much that its plate is asked for; these are what is usual. */
      byPlate: z.boolean().optional(),
      /** Runs off a 12 V or USB socket on a lead of its own; what has only a mains plug needs the hook-up or an inverter. */
      lead12V: z.boolean().optional(),
      kg: positive.optional(),
    }),
  ),
  carRatio: z.strictObject({ usual: chance, most: chance }),
  noseShare: z.strictObject({ low: chance, high: chance }),
  cassetteDaysWhenWarm: positive,
  /** Months counted as cold for water and battery days. */
  coldMonths: z.array(z.number().int().min(1).max(12)),
});

export const van = z.strictObject({
  van: id,
  name: z.string().min(1),
  kind: z.string().min(1),
  body: z.enum(['caravan', 'campervan']),
  built: z.number().int(),
  berths: z.number().int().min(1),
  /** For priors that are given by van this one counts as that van, until it has its own. */
  priorsAs: id.optional(),
  /** Three things people ask first, as topic ids. */
  asked: z.array(id).length(3),
  /** Loose facts for slots {van.name}, {van.length} ... */
  values: z.record(z.string(), z.union([z.string(), z.number()])),
  /** The parts this van has, each with its own values: where it is, its fuse, the words on its controls. */
  has: z.record(id, z.record(z.string(), z.union([z.string(), z.number()]))),
  /** What to say of things it has not: by part or role; one line naming what it has instead. */
  lacks: z.record(id, z.string().min(1)),
  figures,
  /** Kit out of use, said before any answer about it. Days are local, 2027-07-24; `until` null is until changed. */
  out: z
    .array(z.strictObject({ part: id, from: z.iso.date(), until: z.iso.date().nullable(), say: z.string().min(1) }))
    .default([]),
});

const clock = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time such as 08:30');
const weekday = z.enum(['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun']);
const hours = z.strictObject({ from: clock, to: clock });

export const firm = z.strictObject({
  name: z.string(),
  yard: z.string(),
  country: z.string().length(2),
  timeZone: z.string(),
  phone: z.string(),
  onCallPhone: z.string(),
  hours: z.record(weekday, hours),
  /** Closed days: 12-25, or 2027-05-03 for one year. */
  closed: z.array(z.string().regex(/^(\d{4}-)?\d{2}-\d{2}$/)),
  onCall: hours,
  people: z.array(
    z.strictObject({
      name: z.string(),
      firstName: z.string(),
      does: z.array(z.enum(['office', 'workshop', 'handover'])),
      days: z.array(weekday),
      onCall: z.array(weekday),
    }),
  ),
  aims: z.strictObject({ officeMinutes: positive, onCallMinutes: positive }),
  /** Minutes between reminders when nobody takes a thread. */
  reminders: z.strictObject({ danger: positive, urgent: positive, usual: positive }),
  /** Minutes of somebody's time: what the decision between answering, offering and passing is made of. */
  costs: z.strictObject({
    wrongAnswer: positive,
    wrongAnswerHazard: positive,
    wrongChoice: positive,
    look: positive,
    pass: positive,
  }),
  /** The price of a pass in minutes, for the walks: by when it happens. */
  passMinutes: z.strictObject({ open: positive, onCall: positive, closed: positive }),
  /** Numbers to call by country; '*' for elsewhere. `checked` is the day the firm last rang or read it. */
  numbers: z.record(
    z.string(),
    z.array(
      z.strictObject({
        id,
        label: z.string(),
        /** The label in other languages, where it holds words. */
        labels: z.record(z.string(), z.string()).optional(),
        number: z.string(),
        for: z.string(),
        checked: z.string().nullable(),
      }),
    ),
  ),
  /** Loose facts for slots {firm.deposit} ... */
  values: z.record(z.string(), z.union([z.string(), z.number()])),
  constants,
});

export const glossary = z.strictObject({
  words: z.array(
    z.strictObject({
      says: z.string().min(1),
      means: z.string().min(1),
      /** The part or role it names here, if it is one. */
      part: id.optional(),
      note: z.string().optional(),
    }),
  ),
});

export const places = z.strictObject({
  sites: z.record(
    id,
    z.strictObject({
      name: z.string(),
      country: z.string().length(2),
      sun: sunBand.default('north'),
      /** 0: no hook-up. */
      amps: z.number().min(0),
      also: z.array(z.string()).default([]),
      values: z.record(z.string(), z.union([z.string(), z.number()])).default({}),
      places: z.array(
        z.strictObject({
          kind: id,
          name: z.string(),
          metres: z.number().min(0),
          /** As on the door: '09:00-17:00 daily', '09:00-18:00 Mon-Fri; 09:00-13:00 Sat', 'always open', 'by arrangement'. */
          hours: z.string(),
          note: z.string().default(''),
          /** Gas exchange: what it has, such as propane-6. */
          gas: z.array(z.string()).default([]),
        }),
      ),
    }),
  ),
});

export const questions = z.strictObject({
  questions: z.array(
    z.strictObject({
      van: id.optional(),
      text: z.string().min(1),
      /** The topic that must come back, or the outcome when there is none. */
      topic: id.optional(),
      outcome: z.enum(['answer', 'check', 'calculate', 'safety', 'pass', 'chat', 'lacks']).optional(),
      writer: id.optional(),
    }),
  ),
});

/** Words of chat, of asking for a person, of things that are not ours: classes trained beside the topics. */
export const talk = z.strictObject({
  chat: z.record(id, z.strictObject({ reply: z.string(), wordings: z.record(id, z.array(z.string().min(1))) })),
  person: z.record(id, z.array(z.string().min(1))),
  background: z.record(id, z.array(z.string().min(1))),
  /** Languages we recognise but do not answer in: what an ordinary question in one is told, in it. */
  languages: z.record(z.string(), z.strictObject({ name: z.string(), willRead: z.string() })),
});

export type When = z.infer<typeof when>;
export type Clause = z.infer<typeof clause>;
export type Says = z.infer<typeof says>;
export type PictureUseData = z.infer<typeof pictureUse>;
export type AnswerData = z.infer<typeof answer>;
export type CauseData = z.infer<typeof cause>;
export type TopicData = z.infer<typeof topic>;
export type TopicKind = (typeof KINDS)[number];
export type PartData = z.infer<typeof part>;
export type SystemData = z.infer<typeof system>;
export type Figures = z.infer<typeof figures>;
export type Constants = z.infer<typeof constants>;
export type VanData = z.infer<typeof van>;
export type FirmData = z.infer<typeof firm>;
export type GlossaryData = z.infer<typeof glossary>;
export type PlacesData = z.infer<typeof places>;
export type SiteData = PlacesData['sites'][string];
export type QuestionsData = z.infer<typeof questions>;
export type TalkData = z.infer<typeof talk>;
