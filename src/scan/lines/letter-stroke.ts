/** In line widths: no stroke of a letter is longer. */
export const LETTER_STROKE = 8;
