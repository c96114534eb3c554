/** How tightly a sheet is set; lengths in points. */
export interface Density {
  /** Type of the table's chief words. */
  readonly type: number;
  /** Type of what stands under or after them. */
  readonly small: number;
  /** What stands under the chief words when there is room runs on behind them when there is not. */
  readonly runOn: boolean;
  /** Above and below the words of a row. */
  readonly padding: number;
  /** The most that the face may be high. */
  readonly faceHeight: number;
  readonly margin: number;
}

const roomy = { runOn: false, margin: 34 } as const;
const tight = { runOn: true, margin: 26 } as const;

/** From comfortable at arm's length down to the least that is still legible on paper. */
export const DENSITIES: readonly Density[] = [
  { ...roomy, type: 12.5, small: 10, padding: 4, faceHeight: 230 },
  { ...roomy, type: 11, small: 9, padding: 3, faceHeight: 210 },
  { ...roomy, type: 10, small: 8.5, padding: 2.5, faceHeight: 190 },
  { ...roomy, type: 9.25, small: 8, padding: 2, faceHeight: 175 },
  { ...tight, type: 9.25, small: 8, padding: 2, faceHeight: 165 },
  { ...tight, type: 8.5, small: 7.5, padding: 1.5, faceHeight: 150 },
  { ...tight, type: 8, small: 7.5, padding: 1, faceHeight: 135 },
  { ...tight, type: 7.5, small: 7.5, padding: 0.6, faceHeight: 112 },
  { ...tight, type: 7.5, small: 7.5, padding: 0.2, faceHeight: 90, margin: 20 },
];
