import { type PackedWeights, packRow } from './model.ts';
import { aroundZero, meanOf, type NaiveBayes } from './naive-bayes.ts';
import { groupWeight, newcomerWeight, type Warm } from './warm.ts';

/** What a small change moved. `before` and `after` are of the same lines' neighbourhood as it was and as it will be. */
export type Moved = {
  readonly warm: Warm;
  /** Of the features, in the wider space. */
  readonly featureCount: number;
  /** The features that were fitted on, by their place. */
  readonly places: readonly number[];
  /** For each of `places` a weight for each class; `before` has the old classes alone. */
  readonly fitted: { readonly before: Float32Array; readonly after: Float32Array };
  readonly bayes: { readonly before: NaiveBayes; readonly after: NaiveBayes; readonly share: number };
  /** The classes all of whose lines are in the neighbourhood, and some of them new, gone or read otherwise. */
  readonly touched: ReadonlySet<number>;
  /** The groups of each class, by number. */
  readonly groups: readonly (readonly number[])[];
};

/** The old weights with what was moved: rows that were not touched are the same to the bit. */
export function rewritten(old: PackedWeights, moved: Moved): PackedWeights {
  const { featureCount, places, groups } = moved;
  const classes = groups.length;
  const packed: PackedWeights = {
    classes,
    rows: new Int8Array(featureCount * classes),
    scale: new Float32Array(featureCount),
  };
  const localOf = new Map(places.map((place, i) => [place, i]));
  const row = new Float32Array(classes);
  const offsets = aroundZero({ offset: moved.warm.offsets });
  for (let f = 0; f < featureCount; f++) {
    const local = localOf.get(f);
    const isOld = f < old.scale.length;
    if (local === undefined && isOld && classes === old.classes) {
      packed.rows.set(old.rows.subarray(f * classes, (f + 1) * classes), f * classes);
      packed.scale[f] = old.scale[f] as number;
      continue;
    }
    for (let c = 0; c < classes; c++) {
      if (c >= old.classes) row[c] = newcomerRow(moved.warm, f, groups[c] ?? []);
      else if (isOld) row[c] = (old.rows[f * old.classes + c] as number) * (old.scale[f] as number);
      else row[c] = -moved.bayes.share * (offsets[c] as number);
    }
    if (local !== undefined) addFitted(row, local, old.classes, moved.fitted);
    addBayes(row, f, isOld, old.classes, moved);
    packRow(row, f, packed);
  }
  return packed;
}

function newcomerRow(warm: Warm, feature: number, groups: readonly number[]): number {
  return groups.reduce((sum, group) => sum + groupWeight(warm, feature, group), newcomerWeight(warm, feature));
}

function addFitted(row: Float32Array, local: number, oldClasses: number, { before, after }: Moved['fitted']): void {
  const classes = row.length;
  for (let c = 0; c < classes; c++) {
    const now = after[local * classes + c] as number;
    row[c] = c < oldClasses ? (row[c] as number) + now - (before[local * oldClasses + c] as number) : now;
  }
}

/** A new feature's lines are all in the neighbourhood, so that it is counted for every class. */
function addBayes(
  row: Float32Array,
  f: number,
  isOld: boolean,
  oldClasses: number,
  { bayes, touched, warm }: Moved,
): void {
  const { before, after, share } = bayes;
  const gain = (of: NaiveBayes, c: number): number => of.weight(f, c) + (of.offset[c] as number);
  for (let c = 0; c < row.length; c++) {
    const moved =
      c >= oldClasses
        ? after.weight(f, c) + meanOf(warm.offsets)
        : touched.has(c)
          ? after.weight(f, c) - before.weight(f, c)
          : isOld
            ? 0
            : gain(after, c);
    row[c] = (row[c] as number) + share * moved;
  }
}
