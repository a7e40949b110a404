import { existsSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { parse } from 'papaparse';
import { describe, expect, it } from 'vitest';
import { afterAnswer } from '../../src/faults/beliefs.ts';
import { bestPlan, everythingOpen } from '../../src/faults/plan.ts';
import type { Problem } from '../../src/faults/problem.ts';
import { expectedMinutes, optimum, type Policy } from '../../src/faults/simulation/optimum.ts';
import { betaBelow, betaQuantile } from '../../src/review/beta.ts';

type Action = { readonly name: string; readonly p: number; readonly minutes: number };

/** The textbook's problem: each action mends its own fault for certain, and a call for help costs the same whatever it is. */
function problemFrom(actions: readonly Action[], call: number, yes?: readonly number[]): Problem {
  return {
    prior: [...actions.map(({ p }) => p), 0],
    checks: actions.map((_, i) =>
      yes !== undefined && i === 0 ? { minutes: 0, yes: [...yes, 0], reset: false } : null,
    ),
    fixes: actions.map(({ minutes }) => ({ minutes, success: 1, reset: false, fuse: false })),
    pass: Array.from({ length: actions.length + 1 }, () => call),
    cannotTell: 0,
  };
}

/** Follows an order, then calls. */
function inOrder(order: readonly number[]): Policy {
  return (_, at) => {
    const i = order.find((each) => (at.open.fixes & (1 << each)) !== 0);
    return i === undefined ? { kind: 'pass' } : { kind: 'fix', i };
  };
}

function permutations(count: number): number[][] {
  if (count === 0) return [[]];
  return permutations(count - 1).flatMap((order) =>
    Array.from({ length: count }, (_, at) => [...order.slice(0, at), count - 1, ...order.slice(at)]),
  );
}

/** The order in which the best plan does its fixes, and its cost. */
function planned(actions: readonly Action[], call: number, prior?: readonly number[]): { order: string; cost: number } {
  const problem = problemFrom(actions, call);
  let masses = Float64Array.from(prior ?? problem.prior);
  let open = everythingOpen(problem);
  const { minutes } = bestPlan(problem, masses, open);
  let order = '';
  for (;;) {
    const { action } = bestPlan(problem, masses, open);
    if (action.kind === 'pass') return { order, cost: minutes };
    order += actions[action.i]?.name ?? '?';
    open = { ...open, fixes: open.fixes & ~(1 << action.i) };
    masses = masses.map((mass, h) => (h === action.i ? 0 : mass));
  }
}

const NEVER = 1e9;

describe('the order of fixes (Kadane and Simon 1977; Heckerman, Breese and Rommelse, CACM 38(3), 1995)', () => {
  it('by chance per minute is beaten by no other order of random problems of two to six fixes', () => {
    const action = fc.record({
      p: fc.double({ min: 0.01, max: 1, noNaN: true }),
      minutes: fc.double({ min: 0.1, max: 60, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(action, { minLength: 2, maxLength: 6 }), (drawn) => {
        const total = drawn.reduce((sum, { p }) => sum + p, 0);
        const actions = drawn.map(({ p, minutes }, i) => ({ name: String(i), p: p / total, minutes }));
        const problem = problemFrom(actions, NEVER);
        const brute = Math.min(
          ...permutations(actions.length).map((order) => expectedMinutes(problem, inOrder(order))),
        );
        expect(planned(actions, NEVER).cost).toBeCloseTo(brute, 6);
      }),
      { numRuns: 60, seed: 3 },
    );
  });

  it('with a call for help as the way out is the best of all sets and orders', () => {
    const action = fc.record({
      p: fc.double({ min: 0.01, max: 1, noNaN: true }),
      minutes: fc.double({ min: 0.1, max: 30, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(action, { minLength: 2, maxLength: 6 }),
        fc.double({ min: 1, max: 60, noNaN: true }),
        (drawn, call) => {
          const total = drawn.reduce((sum, { p }) => sum + p, 0);
          const actions = drawn.map(({ p, minutes }, i) => ({ name: String(i), p: p / total, minutes }));
          expect(planned(actions, call).cost).toBeCloseTo(optimum(problemFrom(actions, call)).minutes, 9);
        },
      ),
      { numRuns: 100, seed: 4 },
    );
  });
});

describe('Bayes’ rule', () => {
  it('gives 7.7 % for the woman with a positive mammogram (Eddy 1982, in Judgment under Uncertainty, chapter 18; from memory)', () => {
    // 1 % have cancer; the test finds 79.2 % of them and alarms for 9.6 % of the others.
    const problem: Problem = {
      prior: [0.01, 0.99],
      checks: [{ minutes: 0, yes: [0.792, 0.096], reset: false }],
      fixes: [null],
      pass: [0, 0],
      cannotTell: 0,
    };
    const [ill = 0, well = 0] = afterAnswer(problem, Float64Array.from(problem.prior), 0, 'yes');
    expect(ill / (ill + well)).toBeCloseTo(0.077, 3);
  });
});

const CHECKS = new URL('../../../shared/reference/checks.csv', import.meta.url);
const there = existsSync(CHECKS);
if (!there) console.log('../shared is not there: the decision rows of checks.csv are not run');

describe.skipIf(!there)('the worked example of ../shared/reference (rows decision of checks.csv, D-01 to D-05)', () => {
  type Row = { id: string; topic: string; inputs: string; expected: string };
  const text = there ? readFileSync(CHECKS, 'utf8') : '';
  const rows = parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
  const row = (id: string): Row => {
    const found = rows.find((each) => Object.values(each)[0] === id);
    if (found === undefined) throw new Error(`no row ${id}`);
    const [, topic = '', inputs = '', expected = ''] = Object.values(found);
    return { id, topic, inputs, expected };
  };
  const read = (id: string) => {
    const { inputs, expected } = row(id);
    const p = new Map(
      [...(/p=([^;]*)/.exec(inputs)?.[1] ?? '').matchAll(/([a-e])([.\d]+)/g)].map((m) => [m[1] ?? '', Number(m[2])]),
    );
    const c = new Map(
      [...(/C=([^;]*)/.exec(inputs)?.[1] ?? '').matchAll(/([a-e])([.\d]+)/g)].map((m) => [m[1] ?? '', Number(m[2])]),
    );
    const actions = [...p].map(([name, chance]) => ({ name, p: chance, minutes: c.get(name) ?? Number.NaN }));
    const order = [...(/order=([a-e]+)/.exec(inputs)?.[1] ?? '')].map((name) =>
      actions.findIndex((each) => each.name === name),
    );
    const call = Number(/call_cost=([.\d]+)/.exec(inputs)?.[1] ?? NEVER);
    return { actions, order, call, expected, inputs };
  };
  const cost = (actions: readonly Action[], order: readonly number[]) =>
    expectedMinutes(problemFrom(actions, 0), inOrder(order));

  it('CD01: the best order', () => {
    const { actions, expected } = read('CD01');
    expect(planned(actions, NEVER).order).toBe(expected);
  });

  it.each(['CD02', 'CD03', 'CD04'])('%s: the expected cost of an order', (id) => {
    const { actions, order, expected } = read(id);
    expect(cost(actions, order)).toBeCloseTo(Number(expected), 3);
  });

  it('CD05: the worst order', () => {
    const { actions, expected } = read('CD05');
    const worst = permutations(5)
      .map((order) => ({ order, cost: cost(actions, order) }))
      .reduce((a, b) => (b.cost > a.cost ? b : a));
    expect(`${worst.order.map((i) => actions[i]?.name).join('')} ${worst.cost.toFixed(3)}`).toBe(expected);
  });

  it.each(['CD06', 'CD07', 'CD08', 'CD09'])('%s: what to do before calling for help', (id) => {
    const { actions, call, expected } = read(id);
    const plan = planned(actions, call);
    expect(`${plan.order === '' ? 'none' : plan.order} ${plan.cost.toFixed(3)}`).toBe(expected);
  });

  const YES = [0.05, 0.9, 0.02, 0.05, 0.02];
  const having = (answer: 'yes' | 'no') => {
    const { actions } = read('CD10');
    const problem = problemFrom(actions, NEVER, YES);
    return { actions, masses: afterAnswer(problem, Float64Array.from(problem.prior), 0, answer) };
  };
  const total = (masses: Float64Array) => masses.reduce((sum, mass) => sum + mass, 0);

  it('CD10, CD11: the chance of yes, and of b after it', () => {
    const { masses } = having('yes');
    expect(row('CD10').inputs).toContain('a.05 b.9 c.02 d.05 e.02');
    expect(total(masses)).toBeCloseTo(Number(row('CD10').expected), 4);
    expect((masses[1] ?? 0) / total(masses)).toBeCloseTo(Number(row('CD11').expected), 4);
  });

  it.each([
    ['CD12', 'yes'],
    ['CD13', 'no'],
  ] as const)('%s: the best order after %s', (id, answer) => {
    const { actions, masses } = having(answer);
    const plan = planned(actions, NEVER, [...masses]);
    expect(`${plan.order} ${(plan.cost / total(masses)).toFixed(3)}`).toBe(row(id).expected);
  });

  it('CD14: what the question is worth', () => {
    const { actions } = read('CD14');
    const without = planned(actions, NEVER).cost;
    const asked = optimum(problemFrom(actions, NEVER, YES)).minutes;
    expect(without - asked).toBeCloseTo(Number(row('CD14').expected), 3);
  });

  it('CD15: repair adds a constant', () => {
    const { actions, order, inputs, expected } = read('CD15');
    const repairs = [...(/repair costs ([^;]*)/.exec(inputs)?.[1] ?? '').matchAll(/[a-e]([.\d]+)/g)].map((m) =>
      Number(m[1]),
    );
    const constant = actions.reduce((sum, { p }, i) => sum + p * (repairs[i] ?? 0), 0);
    expect(cost(actions, order) + constant).toBeCloseTo(Number(expected), 3);
  });
});

describe('credible intervals', () => {
  it('match Jeffreys’ 95 % intervals of Brown, Cai and DasGupta (Statistical Science 16(2), 2001, table 5), from memory', () => {
    // x successes of n: the table's limits to three places.
    for (const [x, n, low, high] of [
      [1, 7, 0.016, 0.501],
      [2, 7, 0.065, 0.648],
      [1, 10, 0.011, 0.381],
    ] as const) {
      expect(betaQuantile(0.025, x + 0.5, n - x + 0.5)).toBeCloseTo(low, 3);
      expect(betaQuantile(0.975, x + 0.5, n - x + 0.5)).toBeCloseTo(high, 3);
    }
  });

  it('agree with distributions whose quantiles have a closed form', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.double({ min: 0.2, max: 300, noNaN: true }),
        (x, a) => {
          // Beta(a, 1) is x to the power a; the arcsine law is Beta(1/2, 1/2).
          expect(betaBelow(x, a, 1)).toBeCloseTo(x ** a, 9);
          expect(betaBelow(x, 0.5, 0.5)).toBeCloseTo((2 / Math.PI) * Math.asin(Math.sqrt(x)), 9);
          expect(betaBelow(betaQuantile(x, a + 1, 3), a + 1, 3)).toBeCloseTo(x, 6);
        },
      ),
      { numRuns: 200, seed: 5 },
    );
  });
});
