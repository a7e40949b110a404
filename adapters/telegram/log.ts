/** What we ask of a log; pino is one. Neither words of people nor the token are ever given to it. */
export type Log = {
  readonly info: (data: object, message: string) => void;
  readonly warn: (data: object, message: string) => void;
  readonly error: (data: object, message: string) => void;
};
