import type { Counted } from './quantities.ts';
import type { Source } from './sources.ts';
import type { CalculatorContext, InputName, Inputs } from './types.ts';

export type InputValue = NonNullable<Inputs[string]>;

/** What words may be read as. A calculator's table names one of these for each input. */
export type InputKind =
  | 'amps'
  | 'watts'
  | 'anywhere'
  | 'from'
  | 'target'
  | 'start'
  | 'weight'
  | 'people'
  | 'children'
  | 'nights'
  | 'month'
  | 'hours'
  | 'percent'
  | 'bottles'
  | 'slope'
  | 'mm'
  | 'metres'
  | 'volts'
  | 'ampHours'
  | 'outside'
  | 'inside'
  | 'kg'
  | 'flag'
  | 'count'
  | 'appliances'
  | 'loads'
  | 'mainsOnly'
  | 'things'
  | 'source';

/** A question for an input, with what may be picked. */
export type Asking = { readonly question: string; readonly choices: readonly string[] };

/** One input of a sum: what it is, how far it may go, where it comes from and how it is asked for. */
export type InputSpec = {
  /** Its key among the inputs kept with the thread. */
  readonly name: string;
  readonly as: InputKind;
  /** The name under which it is asked for or refused. */
  readonly known: InputName;
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
  /** The end of a range to plan for: '2 to 4'. The high one when left out. */
  readonly worse?: 'low' | 'high';
  /** For a flag what sets it, for a weight or count the words that must stand near. */
  readonly words?: RegExp;
  /** For a flag what clears it again, for a weight the words that must not stand near. */
  readonly unless?: RegExp;
  /** Why a value beyond `least` and `most` cannot be: 'a post gives 2 to 32 amps'. */
  readonly sane?: string;
  /** The settings a source may name. */
  readonly sources?: (context: CalculatorContext) => readonly Source[];
  /** What the van or the booking already knows. */
  readonly fill?: (context: CalculatorContext) => InputValue | null;
  /** Whether the sum cannot be done without it. Never, when left out. */
  readonly needed?: (inputs: Inputs, context: CalculatorContext) => boolean;
  readonly ask?: (context: CalculatorContext, inputs: Inputs) => Asking;
};

/** A text made ready for reading against any table. */
export type Reading = {
  readonly text: string;
  readonly counted: Counted;
  readonly context: CalculatorContext;
  /** The name of the input that was asked for, if a question is open. */
  readonly asked: string | null;
  readonly previous: Inputs | null;
};

/** Reads one input from a text; null when the text does not give it. */
export type Reader = (reading: Reading, spec: InputSpec) => InputValue | null;
