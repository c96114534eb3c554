const NUMBER_AND_WORD = /(?<=^|[^\p{L}\d.])(\d+(?:[.,]\d+)*) (?=\p{L})/gu;

/** The text with each number kept on one line with its unit or month: `16 Sep`, `24.60 V`. */
export const unbroken = (text: string): string => text.replace(NUMBER_AND_WORD, "$1\u00a0");
