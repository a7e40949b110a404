import { type PackedWeights, packWeights } from './model.ts';
import type { FitState } from './softmax.ts';

/**
 * Where the fit of a model stood when it ended, in 8 bits a number, so that a small change of the graph can be learnt from
 * there. The columns of each feature are its classes and, behind them, its groups.
 */
export type Warm = {
  /** Of the model that was fitted. */
  readonly hash: string;
  readonly classes: number;
  readonly groupCount: number;
  /** Of naive Bayes. */
  readonly offsets: Float64Array;
  readonly rows: PackedWeights;
  /** 0, or the logarithm of how far the weight was moved. */
  readonly pushed: Uint8Array;
};

/** What was moved less than this counts as not moved. Each step up is 9.5 % more, to {@link MOST} times as much. */
const LEAST = 1e-8;
const MOST = 1e10;
const STEP = Math.log(MOST) / 254;

export function packWarm(hash: string, { rows, pushed }: FitState, about: Pick<Warm, 'groupCount' | 'offsets'>): Warm {
  const packed = new Uint8Array(pushed.length);
  for (let i = 0; i < pushed.length; i++) {
    const one = pushed[i] as number;
    if (one >= LEAST) packed[i] = Math.min(255, 1 + Math.round(Math.log(one / LEAST) / STEP));
  }
  const classes = about.offsets.length;
  return { hash, classes, ...about, rows: packWeights({ rows, classes: classes + about.groupCount }), pushed: packed };
}

/** How wide the rows are to be: new classes and groups stand behind the old ones of their sort. */
export type Layout = { readonly classes: number; readonly groupCount: number };

/**
 * The state of some features alone, for a fit over these.
 *
 * @param places Of the features in the whole space; one that the warm state has not begins at zero.
 */
export function stateOf(warm: Warm, places: readonly number[], { classes, groupCount }: Layout): FitState {
  const columns = classes + groupCount;
  const rows = new Float32Array(places.length * columns);
  const pushed = new Float32Array(places.length * columns);
  const known = warm.rows.scale.length;
  const old = warm.classes + warm.groupCount;
  for (const [i, place] of places.entries()) {
    if (place >= known) continue;
    const scale = warm.rows.scale[place] as number;
    for (let c = 0; c < old; c++) {
      const from = place * old + c;
      const to = i * columns + (c < warm.classes ? c : c - warm.classes + classes);
      rows[to] = scale * (warm.rows.rows[from] as number);
      const step = warm.pushed[from] as number;
      pushed[to] = step === 0 ? 0 : LEAST * Math.exp((step - 1) * STEP);
    }
    if (classes > warm.classes)
      rows.fill(newcomerWeight(warm, place), i * columns + warm.classes, i * columns + classes);
  }
  return { rows, pushed };
}

/**
 * Where a new class begins with a feature: as far below zero as the classes that lost by it are on average. The lines that
 * pushed them down would have pushed the new one, too.
 */
export function newcomerWeight({ rows, classes }: Warm, feature: number): number {
  if (feature >= rows.scale.length) return 0;
  let sum = 0;
  for (let c = 0; c < classes; c++) sum += Math.min(0, rows.rows[feature * rows.classes + c] as number);
  return ((rows.scale[feature] as number) * sum) / classes;
}

/** What a group adds to a feature; 0 for a feature that the warm state has not. */
export function groupWeight({ rows, classes, groupCount }: Warm, feature: number, group: number): number {
  if (feature >= rows.scale.length || group >= groupCount) return 0;
  return (rows.scale[feature] as number) * (rows.rows[feature * rows.classes + classes + group] as number);
}
