import { describe, expect, it } from 'vitest';
import { noticeOf } from '../../src/safety/notice.ts';
import { realKnowledge } from '../helpers/real-graph.ts';

const { safety, firm } = realKnowledge();

/** A notice as one text, in English, at a British site in office hours. */
function shown(hazard: string): string {
  const notice = noticeOf(hazard, {
    safety,
    firm,
    language: 'en',
    country: 'GB',
    vanName: null,
    answers: { kind: 'office' },
  });
  if (notice === null) throw new Error(`no notice of ${hazard}`);
  const { first, steps, calls, after, local } = notice;
  return [first, ...steps, ...calls.map(({ label, number }) => `${label} ${number}`), after, local].join('\n');
}
function says(hazard: string, ...parts: readonly RegExp[]): void {
  for (const part of parts) expect(shown(hazard)).toMatch(part);
}

describe('the notices say what those say who know', () => {
  it('smell of gas: out, no flame, no switch, no phone inside, the valve, low-lying gas, 999', () => {
    // Local authority and gas emergency advice; fire-service caravan leaflet (valve); LPG suppliers (heavier than air).
    says(
      'safety-gas-smell',
      /everybody out/i,
      /no flame, no smoking/i,
      /touch no switch, on or off/i,
      /no phone inside/i,
      /valve on the cylinder/i,
    );
    says(
      'safety-gas-smell',
      /heavier than air and lies low/i,
      /999/,
      /emergency number on the cylinder/i,
      /only a registered gas engineer/i,
    );
  });

  it('the piped-gas line is never the only number', () => {
    // The GB gas emergency line is set up for piped gas; it does not send a fitter to every cylinder.
    const notice = noticeOf('safety-gas-smell', {
      safety,
      firm,
      language: 'en',
      country: 'GB',
      vanName: null,
      answers: { kind: 'closed', opens: '08:30' },
    });
    expect(notice?.calls.map(({ number }) => number)).toEqual(['999', '0800 111 999']);
  });

  it('carbon monoxide: fresh air, the words to say on 999, medical advice even when better, stay out until told', () => {
    // NHS: carbon monoxide poisoning; councils. 'Fresh air alone is not treatment.'
    for (const hazard of ['safety-co-alarm', 'safety-co-symptoms']) {
      says(
        hazard,
        /fresh air/i,
        /999/,
        /say carbon monoxide/i,
        /medical advice/i,
        /even if you feel better/i,
        /fresh air alone is no treatment/i,
      );
      says(hazard, /until the fire service, a gas engineer or another competent person has said so/i);
    }
  });

  it('carbon monoxide: an alarm may rightly be silent as long as EN 50291-2 lets it', () => {
    // EN 50291-2: no alarm before 120 minutes at 30 ppm; between 60 and 90 minutes at 50 ppm.
    says('safety-co-alarm', /60 to 90 minutes at 50 ppm/, /silent at 30 ppm for two hours/);
    says('safety-co-symptoms', /silent for up to two hours/);
  });

  it('never a barbecue under cover, lit, glowing or cooling', () => {
    // NHS, Gas Safe Register, councils, fire services.
    says(
      'hire-barbecue',
      /no barbecue, stove or fire under an awning, under a canopy or in the van/i,
      /carbon monoxide for hours, glowing or looking dead/i,
    );
  });

  it('fire: out and stay out, 999 from outside, where you are, the cylinder, never water on fat', () => {
    // Fire services; LPG supplier emergency page (a cylinder in a fire can burst without warning).
    says(
      'safety-fire',
      /out now and stay out/i,
      /999.* from outside, with the site and the pitch/i,
      /leave your things/i,
      /gas cylinder; it can burst without warning/i,
    );
    says('safety-fire', /never water/i, /do not go back in for anything until the fire service has said so/i);
  });

  it('electric shock: do not touch, power off first, dry wood, the chest, hospital even if they seem well', () => {
    // First-aid charity and site-safety pages; jump clear with feet together: common practice, no source.
    says(
      'safety-electric-shock',
      /do not touch them\. power off first/i,
      /push them clear with dry wood/i,
      /999/,
      /pressing on the chest/i,
    );
    says(
      'safety-electric-shock',
      /hospital, even if they seem well/i,
      /jump clear with feet together/i,
      /qualified electrician/i,
    );
  });

  it('burns: 20 minutes of cool running water, rings off, film laid over, no cream, no ice', () => {
    // First-aid and site-safety pages; NHS: burns and scalds.
    says(
      'safety-burn-injury',
      /20 minutes under cool running water, rings off/i,
      /cling film laid over it, no cream, no ice/i,
    );
  });

  it('snaking: off the accelerator, hold straight, no hard braking', () => {
    // Highway Code, rule 98.
    says('towing-snaking', /off the accelerator, hold the wheel straight and let it slow\. no hard braking/i);
  });

  it('battery: no flame, do not touch, acid rinsed for 20 minutes', () => {
    // HSE on battery charging; battery safety sheets.
    says('safety-battery-hot', /no flame/i, /do not touch, move or disconnect the battery/i, /water for 20 minutes/i);
  });

  it('a yellow flame is turned off, aired and left off', () => {
    // Gas-safety page: a lazy yellow flame, soot or heavy streaming windows.
    says(
      'cooking-yellow-flame',
      /turn it off now, open the door and windows, and everybody out/i,
      /carbon monoxide/i,
      /only a registered gas engineer/i,
    );
  });

  it('every notice puts the emergency services and local rules before itself, and never says that it is safe', () => {
    // Common practice, no source.
    for (const hazard of Object.keys(safety.notices)) {
      says(hazard, /follow the emergency services, the site's staff and local rules/i, /999/);
      expect(shown(hazard)).not.toMatch(/safe to (?:go|come|get|return)|until we say/i);
    }
  });

  it('every notice fits one screen of a phone in every language', () => {
    // Common practice, no source: 25 lines of 40 letters.
    for (const { texts } of Object.values(safety.notices)) {
      for (const { first, steps, after } of Object.values(texts))
        expect([first, ...steps, after].join('\n').length).toBeLessThan(1000);
    }
  });
});
