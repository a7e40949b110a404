import { z } from 'zod';
import { id } from './schema.ts';

/*
 * The shape of graph/safety.yaml (the notices, the sentences they share, and what the safety reading looks for) and of
 * graph/safety-examples.yaml and graph/safety-senses.yaml, which are read into it.
 * Languages are BCP 47 codes; English is always there.
 */

export const SAFETY_LANGUAGES = ['en', 'cy', 'de', 'fr', 'nl', 'es', 'it', 'pl', 'pt'] as const;

const language = z.string().regex(/^[a-z]{2}$/, 'a language code of two letters, such as cy');
const sentence = z.string().min(1);
/** One sentence in each language. Slots: {emergency} the number to dial, {firm} its name, {opens} when it opens. */
const saying = z.record(language, sentence);
/**
 * Words or phrases parted by commas; '<group>' stands for all of another group. 'smell~' stands for its regular English
 * endings as well (smells, smelled, smelling), 'smok*' for every word that begins so.
 */
const phrases = z.string().min(1);
const level = z.enum(['danger', 'urgent', 'ask']);

/** One notice in one language. Shown whole, first line first. Slots: {emergency}, {firm}, {van}. */
export const noticeText = z.strictObject({
  /** The action, in the first line. */
  first: sentence,
  steps: z.array(sentence).min(2).max(7),
  /** What stands under the steps: who may say it is over, what only licensed people may do. */
  after: sentence,
  /** Who has read a translation; null until a native speaker signed, and then the English stands with it. */
  read_by: z.string().nullable().default(null),
});

const notice = z.strictObject({
  level,
  /** Ids of the numbers in firm.yaml to show, first to be called first. The firm's own number is added to every notice. */
  calls: z.array(id).min(1),
  /** What is asked afterwards, in this order: only what changes the action. */
  asks: z.array(z.enum(['everyone-out', 'anyone-ill', 'where'])).default([]),
  /** Asked first when it could be something harmless instead, so that only a clear no ends the danger. */
  is_it: saying.optional(),
  texts: z.record(language, noticeText),
});

const shared = z.strictObject({
  /** Under every notice: whose word goes before ours. */
  local: saying,
  /** When nobody of the firm answers. Slots: {firm}, {opens}, {emergency}. */
  closed: saying,
  /** Over the English text under a translation that no native speaker has signed. */
  english_below: saying,
  /** The labels of numbers to call, by the id of the number; 'firm' and 'on-call' are the firm's own. */
  calls: z.record(id, saying),
  /** When a number was last rung or read. Slot: {day}. */
  checked: saying,
  asks: z.strictObject({ 'everyone-out': saying, 'anyone-ill': saying, where: saying }),
  /** How people say yes and no to those questions. */
  answers: z.strictObject({ yes: z.record(language, phrases), no: z.record(language, phrases) }),
});

export const GUARDS = ['negated', 'question', 'purpose', 'supposed', 'past', 'elsewhere'] as const;

const rule = z.strictObject({
  /** Names of groups, all of which must be there. */
  all: z.array(id).min(1),
  /** The most words from the first to the last term; 9 when left out, 40 across sentences. */
  within: z.number().int().min(1).max(60).optional(),
  /** The terms may stand in different sentences of one message. */
  across: z.boolean().default(false),
  /** The rule is set aside when one of these groups stands anywhere in the message. */
  unless: z.array(id).default([]),
  /** The message has no more words than this. */
  most: z.number().int().min(1).max(20).optional(),
  /** Stands by itself: it names the hazard. Other rules stand only where the second net half believes them. */
  firm: z.boolean().default(false),
  /** Guards that do not set this rule aside. */
  despite: z.array(z.enum(GUARDS)).default([]),
  /** Instead of the notice's own level. */
  level: level.optional(),
});

const tongue = z.strictObject({
  /** Small words that may stand inside a phrase without being part of it: 'burnt (the) toast'. */
  fillers: phrases.optional(),
  groups: z.record(id, phrases).default({}),
  /** Words that set aside what follows them, or what they stand beside, by guard. */
  guards: z.partialRecord(z.enum(GUARDS), phrases).default({}),
  /** Words that turn to something else: 'no smoke but flames'. No guard reaches past one. */
  turns: phrases.optional(),
  /** Words that begin what is so after a question: 'where is the tap there is a smell of gas'. A question reaches no further. */
  starts: phrases.optional(),
  /**
   * Sayings in which danger words mean nothing; each hides the words it is made of. 'shock + price' is two that stand near
   * each other, each a group's name or words as they are said.
   */
  idioms: phrases.optional(),
});

export const reading = z.strictObject({
  /** By language; 'en' is always there. */
  tongues: z.record(language, tongue),
  /** What is dangerous, by hazard: rules over the groups, the same in every language that has the groups. */
  hazards: z.record(id, z.array(rule).min(1)),
  /** Words of no dictionary, parted by spaces, that look like a slip of a word looked for and are meant as they are. */
  alike: z.string().default(''),
  /** What picture signs say. */
  signs: z.record(z.string(), z.string()).default({}),
  /** The second net: whole sentences it learns from beside the topics' wordings. */
  examples: z.strictObject({ danger: z.record(id, z.array(sentence)), plain: z.array(sentence) }),
  /** A thesaurus for the second net, by language: words and phrases by sense. No rule reads it. */
  senses: z.record(language, z.record(id, phrases)),
  /**
   * How sure the second net must be: to show a notice where no rule was met (1: never), to believe a rule, and to let a firm
   * rule stand (0: always), which names its hazard outright.
   */
  sure: z.strictObject({
    alone: z.number().gt(0).lte(1),
    rule: z.number().min(0).lte(1),
    firm: z.number().min(0).lte(0.1),
  }),
});

export const safety = z.strictObject({ notices: z.record(id, notice), shared, reading });

/** graph/safety.yaml by itself, graph/safety-examples.yaml and graph/safety-senses.yaml. */
export const safetyFile = safety.extend({ reading: reading.omit({ examples: true, senses: true }) });
export const safetyExamples = reading.shape.examples;
export const safetySenses = reading.shape.senses;

export type SafetyData = z.infer<typeof safety>;
export type NoticeData = z.infer<typeof notice>;
export type NoticeText = z.infer<typeof noticeText>;
export type SharedSayings = z.infer<typeof shared>;
export type ReadingData = z.infer<typeof reading>;
export type TongueData = z.infer<typeof tongue>;
export type RuleData = z.infer<typeof rule>;
export type Guard = (typeof GUARDS)[number];
