import type { TopicId } from '../basics/ids.ts';
import type { NoticeData, RuleData, SafetyData } from '../knowledge/safety-schema.ts';
import { HAZARDS } from './hazards.ts';

/*
 * The least that is always served: when graph/ cannot be read from the start, whoever says that they smell gas is still
 * told to get out. English only, no examples, words that name the hazard; graph/safety.yaml says all of this better.
 */

const STAY_OUT =
  'Stay away from it until the fire service, a gas engineer or another competent person has said so. Only licensed people may work on gas or mains.';
const CALL = 'Anyone unwell, hurt or trapped, smoke or fire, call {emergency} from a safe place.';
const TELL = "Warn the neighbours and the site's staff.";

const FIRST: Readonly<Record<TopicId, string>> = {
  'safety-gas-smell': 'Everybody out now. No flame, no smoking, and touch no switch, on or off.',
  'safety-gas-alarm': 'Treat it as real. Everybody out now, no flame, and touch no switch, on or off.',
  'gas-hiss-on-connecting': 'Close the cylinder valve if you safely can, and move away. Do not try again.',
  'safety-co-alarm': 'Everybody and the pets out into the fresh air now.',
  'safety-co-symptoms': 'This could be carbon monoxide. Everybody out into the fresh air now.',
  'cooking-yellow-flame': 'Turn it off, open up, everybody out. It can mean carbon monoxide.',
  'hire-barbecue': 'Everybody out into the fresh air now. No fire under an awning or in the van.',
  'safety-smoke-alarm': 'Wake everyone and get everybody out now.',
  'safety-fire': 'Everybody out now and stay out. Call {emergency} from outside.',
  'safety-burning-smell': 'Everybody out first. Do not look for where it comes from.',
  'safety-sparks': "Do not touch it. Everybody out, then power off at the site's post.",
  'safety-electric-shock': "Touch nothing of the van. Power off at the site's post first.",
  'safety-water-electrics': "Touch nothing wet and no switch. Power off at the site's post, from dry ground.",
  'safety-battery-hot': 'Everybody out now. No flame, and do not touch the battery.',
  'safety-burn-injury': 'Anyone badly hurt, call {emergency} now. Burns, 20 minutes under cool running water.',
  'safety-child-locked-in': 'Hot, distressed or very young, call {emergency} now.',
  'safety-storm': 'Leave early for a solid building, away from trees and water.',
  'towing-snaking': 'Off the accelerator, hold the wheel straight, no hard braking.',
  'towing-puncture': 'Pull off where it is safe, hazard lights on, everyone out away from the traffic.',
  'hire-accident': 'People first. Anyone hurt or the road blocked, call {emergency} now.',
};

const NAMES: Readonly<Record<TopicId, string>> = {
  'safety-gas-smell':
    'smell of gas, smell gas, smells of gas, smelling gas, gas smell, gas leak, gas leaking, stinks of gas, reeks of gas',
  'safety-gas-alarm':
    'gas alarm is going, gas alarm going, gas alarm sounding, gas alarm went off, gas alarm has gone off, gas detector going',
  'gas-hiss-on-connecting':
    'bottle is hissing, bottle hissing, cylinder hissing, cylinder is hissing, regulator hissing, regulator is hissing',
  'safety-co-alarm':
    'carbon monoxide alarm, co alarm is going, co alarm going, co alarm sounding, co alarm went off, monoxide alarm',
  'safety-co-symptoms':
    'all have headaches, all feel sick, all got headaches, all feel dizzy, both have headaches, all been sick',
  'cooking-yellow-flame': 'flame is yellow, yellow flame, orange flame, flame is orange',
  'hire-barbecue':
    'barbecue in the awning, bbq in the awning, barbecue inside, bbq inside, barbecue in the van, bbq in the van',
  'safety-smoke-alarm':
    'smoke alarm is going, smoke alarm going, smoke alarm sounding, smoke alarm went off, smoke alarm will not stop',
  'safety-fire': 'on fire, there is a fire, caught fire, in flames, fire in the van, van is burning, flames',
  'safety-burning-smell': 'burning smell, smell of burning, smells of burning, smell burning, burning plastic',
  'safety-sparks': 'sparks, sparking, arcing',
  'safety-electric-shock': 'electric shock, got a shock, electrocuted, shock off the',
  'safety-water-electrics':
    'water in the sockets, water on the sockets, sockets are wet, fuse box is wet, water in the fuse box',
  'safety-battery-hot':
    'battery is hot, battery is hissing, battery is smoking, battery has swollen, battery swollen, battery is bulging',
  'safety-burn-injury':
    'unconscious, not breathing, bleeding, heart attack, ambulance, scalded, badly burnt, burnt his, burnt her, burnt my',
  'safety-child-locked-in':
    'baby is locked in, locked in the van, child is locked in, kid is locked in, dog is locked in, locked the baby in',
  'safety-storm': 'storm, lightning, flooding, gale',
  'towing-snaking': 'snaking, fishtailing, swaying from side to side',
  'towing-puncture': 'puncture, flat tyre, burst tyre, blowout',
  'hire-accident': 'had an accident, we crashed, had a crash, car crash',
};

const RULE: Omit<RuleData, 'all'> = { across: false, unless: [], firm: true, despite: [] };

function notice(hazard: TopicId, first: string): NoticeData {
  return {
    level: HAZARDS[hazard]?.level ?? 'danger',
    calls: ['emergency'],
    asks: ['everyone-out', 'anyone-ill', 'where'],
    texts: { en: { first, steps: [CALL, TELL], after: STAY_OUT, read_by: null } },
  };
}

/** Serves until graph/ can be read. */
export const builtInSafety: SafetyData = {
  notices: Object.fromEntries(Object.entries(FIRST).map(([hazard, first]) => [hazard, notice(hazard, first)])),
  shared: {
    local: { en: "Follow the emergency services, the site's staff and local rules." },
    closed: { en: 'Nobody at {firm} can answer before {opens}. Do not wait for us; call {emergency} now.' },
    english_below: { en: 'In English:' },
    calls: { emergency: { en: 'Emergency services' } },
    checked: { en: 'checked {day}' },
    asks: {
      'everyone-out': { en: 'Is everyone out?' },
      'anyone-ill': { en: 'Does anyone need an ambulance?' },
      where: { en: 'Where are you?' },
    },
    answers: { yes: { en: 'yes, yeah, yep, all out' }, no: { en: 'no, nope, not yet, not all' } },
  },
  reading: {
    tongues: {
      en: {
        fillers: 'the, a, an, my, our, his, her',
        groups: NAMES,
        guards: { negated: 'no, not, never', supposed: 'if, in case, ever', past: 'last year, years ago' },
      },
    },
    hazards: Object.fromEntries(Object.keys(NAMES).map((hazard) => [hazard, [{ all: [hazard], ...RULE }]])),
    alike: '',
    signs: { '🔥': 'flames' },
    examples: { danger: {}, plain: [] },
    senses: {},
    sure: { alone: 1, rule: 0, firm: 0 },
  },
};
