import { climb } from "./climb.ts";
import type { DrawnSymbol } from "./drawn-symbol.ts";
import { type ForeignLine, foreignLine, isOnForeign } from "./foreign-line.ts";
import { type Change, LoosePose } from "./loose-pose.ts";
import { PointMarks } from "./point-marks.ts";
import { type Matrix, matrixOf, type Pose } from "./pose.ts";
import { type Sampled, sampledOf } from "./sampled.ts";
import { clutterOf, inkedOf, lineAround, strangeIn, strayOf } from "./stray-line.ts";
import type { SymbolPage } from "./symbol-page.ts";
import type { Thickets } from "./thickets.ts";

/** How well a symbol lies on the ink of a page; all are shares, 1 the best but for clutter. */
export interface Fit {
  readonly pose: Pose;
  /** How far its points lie from a line on average, in line widths. */
  readonly off: number;
  /** Of all its points. */
  readonly mean: number;
  /** Of its worst stroke. */
  readonly least: number;
  /** Of its worst lead; 1 where it has none. */
  readonly leads: number;
  /** Of where paper must be, the share that is not. */
  readonly inked: number;
  /** Line within its zone that it does not explain, to the length of its own. */
  readonly clutter: number;
  /** A straight line that is none of it runs through it: what lies on that is left out of the last two. */
  readonly isCrossed: boolean;
}

/** What a pose must have for the next look at it: each costs more than the one before. */
interface Needs {
  readonly mean: number;
  readonly least: number;
  readonly leads: number;
  readonly clutter: number;
  readonly inked: number;
}

/** Before it is moved to where it fits best, its points held against ink that is near enough; ... */
const AT_FIRST: Needs = { mean: 0.87, least: 0.5, leads: 0.5, clutter: 0.75, inked: 0.7 };
/** ... when it roughly is; ... */
const ROUGHLY: Needs = { mean: 0.7, least: 0.35, leads: 0.28, clutter: 0.6, inked: 1 };
/** ... and there. Worse ones are not looked at further: their confidence would come to nothing. */
const AT_LAST: Omit<Needs, "clutter" | "inked"> = { mean: 0.75, least: 0.5, leads: 0.4 };
/** Mean of its points where it was guessed to lie, ... */
const GUESSED = 0.6;
/** ... and on the way from there. */
const ON_THE_WAY = 0.4;
/** What counts in where a symbol fits best, beside the mean of its points. */
const LEAST_WEIGHT = 0.3;
const LEAD_WEIGHT = 0.1;
const OFF_WEIGHT = 0.4;
/** What speaks against it: how far other line lies from it in line widths, and where there must be none. */
const STRAY_WEIGHT = 0.5;
const INKED_WEIGHT = 0.3;
/** Steps in which it is moved, line widths. */
const COARSE = [1, 0.5];
const FINE = [0.5, 0.25];
/** A symbol is at most so much larger or smaller than the stroke said that it was found by. */
const STRETCH = 1.3;
/** The nearest strokes of a symbol are drawn this far apart at least, in line widths. */
const APART = 1.6;

const ROUND: readonly Change[] = ["right", "down", "size", "askew"];
const OBLONG: readonly Change[] = ["right", "down", "along", "across", "askew"];

export const unitOfPose = ({ unitBy }: DrawnSymbol, pose: Pose): number =>
  unitBy === "x" ? pose.along : pose.across;

/** The smaller of its two units, pixels. */
const unitOf = ({ along, across }: Pick<Pose, "along" | "across">) => Math.min(along, across);

/** Lays symbols on one page. */
export class Fitter {
  private readonly page: SymbolPage;
  private readonly marks: PointMarks;
  private readonly thickets: Thickets;

  /** `thickets`: counts what is moved, and throws where that is far too much. */
  constructor(page: SymbolPage, thickets: Thickets) {
    this.page = page;
    this.thickets = thickets;
    this.marks = new PointMarks(page);
  }

  /** Whether a symbol may lie so: the cheap question, asked of thousands of poses. */
  mayLie(symbol: DrawnSymbol, pose: Pose): boolean {
    const sampled = sampledOf(symbol);
    if (!this.isApart(sampled, pose)) return false;
    return this.marks.hold(sampled, matrixOf(pose), unitOf(pose), GUESSED);
  }

  /** Moves, stretches and turns a symbol to where it fits best; null where that is nowhere good. */
  settled(symbol: DrawnSymbol, start: Pose): Fit | null {
    const { page, marks } = this;
    const sampled = sampledOf(symbol);
    const loose = new LoosePose(symbol, start);
    if (!this.isApart(sampled, start) || !this.isWorthMoving(symbol, loose)) return null;
    this.thickets.addMoved();
    const hold = (enough: number) => marks.hold(sampled, loose, unitOf(loose), enough);
    const moving = {
      loose,
      changes: symbol.isRound ? ROUND : OBLONG,
      mayBe: () =>
        isAbout(loose.along, start.along) &&
        isAbout(loose.across, start.across) &&
        this.isApart(sampled, loose),
    };
    const markOf = (toBeat: number) => {
      // Nothing that the worst stroke and lead can add makes up for a lower mean.
      if (!hold(Math.max(ON_THE_WAY, toBeat - LEAST_WEIGHT - LEAD_WEIGHT))) return -1;
      const { mean, least, leads, off } = marks;
      return mean + LEAST_WEIGHT * least + LEAD_WEIGHT * leads - OFF_WEIGHT * off;
    };
    const stepsOf = (steps: readonly number[]) => steps.map((step) => step * page.line);
    climb({ ...moving, steps: stepsOf(COARSE), markOf });
    if (!hold(ROUGHLY.mean) || !hasEnough(marks, ROUGHLY)) return null;
    // Strokes that are too short lie on the ink as well: the ink must lie on strokes, too.
    const line = lineAround(page, symbol, loose);
    const inked = () => inkedOf(page, sampled, loose);
    if (this.clutterOf(symbol, loose, line) > ROUGHLY.clutter) return null;
    if (inked() > ROUGHLY.inked) return null;
    climb({
      ...moving,
      steps: stepsOf(FINE),
      markOf: (toBeat) => {
        const mark = markOf(toBeat);
        if (mark <= toBeat) return -1;
        const against = INKED_WEIGHT * inked();
        // Nothing can come of it where more line lies astray than that.
        const most =
          toBeat < 0 ? Number.POSITIVE_INFINITY : (mark - against - toBeat) / STRAY_WEIGHT;
        const stray = strayOf(page, symbol, loose, unitOf(loose), line, most);
        return mark - STRAY_WEIGHT * stray - against;
      },
    });
    const pose = loose.pose();
    const unit = unitOfPose(symbol, pose) / page.line;
    if (unit < symbol.units[0] || unit > symbol.units[1]) return null;
    if (!hold(AT_LAST.mean) || !hasEnough(marks, AT_LAST)) return null;
    const { off, mean, least, leads } = marks;
    const places = strangeIn(page, symbol, loose, unitOf(loose), line);
    const foreign = foreignLine(page, symbol, loose, places);
    const stray = foreign ? apartFrom(foreign, places, page.line) : places.length / 2;
    return {
      ...{ pose, off, mean, least, leads },
      inked: inkedOf(page, sampled, loose, foreign),
      clutter: clutterOf(symbol, unitOf(loose), stray),
      isCrossed: foreign !== null,
    };
  }

  /** Most poses are of other things, and no moving about would better them. */
  private isWorthMoving(symbol: DrawnSymbol, pose: Matrix & Pick<Pose, "along" | "across">) {
    const { page, marks } = this;
    const sampled = sampledOf(symbol);
    const unit = unitOf(pose);
    if (!marks.mayComeTo(sampled, pose, unit, AT_FIRST)) return false;
    if (inkedOf(page, sampled, pose) > AT_FIRST.inked) return false;
    return this.clutterOf(symbol, pose, lineAround(page, symbol, pose)) <= AT_FIRST.clutter;
  }

  private clutterOf(
    symbol: DrawnSymbol,
    pose: Matrix & Pick<Pose, "along" | "across">,
    line: Int32Array,
  ): number {
    const unit = unitOf(pose);
    return clutterOf(symbol, unit, strangeIn(this.page, symbol, pose, unit, line).length / 2);
  }

  private isApart({ finest }: Sampled, { along, across }: Pick<Pose, "along" | "across">) {
    return Math.min(along * finest[0], across * finest[1]) >= APART * this.page.line;
  }
}

/** Places that do not lie on a line that runs through. */
function apartFrom(foreign: ForeignLine, places: readonly number[], line: number): number {
  let count = 0;
  for (let n = 0; n < places.length; n += 2) {
    if (!isOnForeign(foreign, places[n] as number, places[n + 1] as number, line)) count++;
  }
  return count;
}

const hasEnough = ({ least, leads }: PointMarks, needs: Pick<Needs, "least" | "leads">): boolean =>
  least >= needs.least && leads >= needs.leads;

const isAbout = (size: number, start: number): boolean =>
  size < STRETCH * start && size > start / STRETCH;
