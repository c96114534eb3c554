/** Pixels of the squared picture per symbol unit where a part does not say. */
export const DEFAULT_UNIT = 10;
