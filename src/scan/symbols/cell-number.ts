/** More cells than any row of a page has. */
const ROW = 1 << 20;

/** One number for a cell of a page that is divided into squares. */
export const cellNumber = (column: number, row: number): number => row * ROW + column;
