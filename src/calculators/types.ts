/** The names of inputs a hirer may be asked for: design.md section 9, `asks`. */
export type InputName =
  | 'amps'
  | 'people'
  | 'nights'
  | 'hours'
  | 'watts'
  | 'degrees'
  | 'appliances'
  | 'inside'
  | 'outside'
  | 'month'
  | 'type'
  | 'source'
  | 'car'
  | 'percent'
  | 'things';

/** What is known so far, from words, the booking and the van. Plain values, so that it can be stored with the thread. */
export type Inputs = Readonly<
  Partial<Record<InputName | (string & {}), string | number | boolean | readonly string[]>>
>;

/** A small picture of a sum: what is used against what there is. Drawn by the reply in the pictures' own hand. */
export type Bar = {
  readonly title: string;
  readonly unit: string;
  readonly limit: number;
  readonly segments: readonly { readonly label: string; readonly amount: number }[];
};

/** What a calculation came to. `values` has exactly the keys of design.md section 9 for its topic. */
export type Outcome =
  | {
      readonly kind: 'asks';
      readonly asks: InputName;
      readonly question: string;
      readonly choices: readonly string[];
      readonly inputs: Inputs;
    }
  | {
      readonly kind: 'refused';
      readonly refused: InputName;
      /** What cannot be, and the question again. */
      readonly says: string;
      readonly choices: readonly string[];
      readonly inputs: Inputs;
    }
  | {
      readonly kind: 'result';
      readonly values: Readonly<Record<string, unknown>>;
      /** Verdict first. */
      readonly first: string;
      /** Two or three lines of working. */
      readonly working: readonly string[];
      readonly caution: string | null;
      readonly bar: Bar | null;
      readonly inputs: Inputs;
      /** Also to be passed to staff, whatever the figures (a breathing machine). */
      readonly pass: boolean;
    };

/** What a calculator may look at besides the words. */
export type CalculatorContext = {
  readonly figures: import('../knowledge/schema.ts').Figures;
  readonly vanName: string;
  readonly constants: import('../knowledge/schema.ts').Constants;
  /** From the booking; null is not known and is asked for. */
  readonly amps: number | null;
  readonly people: number | null;
  readonly children: number | null;
  readonly nights: number | null;
  /** 1..12 at the firm. */
  readonly month: number;
  /** Of the site; the firm's own when it is not known. */
  readonly sun: import('../knowledge/schema.ts').SunBand;
};
