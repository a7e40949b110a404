/** One seed for all training: the same wordings give the same model everywhere. */
export const SEED = 20270715;
