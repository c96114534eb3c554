import { IntList } from "./int-list.ts";
import { type PackedBits, packed, placesIn } from "./packed-bits.ts";
import { type Bits, bitsOf } from "./raster.ts";
import { asPart, finished, type Sliced } from "./sliced.ts";

/** As `thinning`, in one go. */
export const thin = (bits: Bits): Bits => finished(thinning(bits));

/** Words of 32 pixels looked at in a slice. */
const SLICE = 60_000;

/** Lines one pixel wide, and the places of all their pixels in order: y times width plus x. */
export interface ThinnedLines {
  readonly lines: Bits;
  readonly places: Int32Array;
}

/** Thins ink to lines one pixel wide that join as the ink did, as `thinnedLines` does. */
export function* thinning(ink: Bits): Sliced<Bits> {
  const { lines } = yield* thinnedLines(ink, yield* packed(ink));
  return lines;
}

/**
 * Thins ink to lines one pixel wide that join as the ink did; `bits` are the same ink packed.
 *
 * Zhang and Suen, "A fast parallel algorithm for thinning digital patterns", CACM 27(3), 1984,
 * pp. 236-239. As there, pixels on the picture's own edge are never removed. Two passes take turns,
 * each deciding on all its pixels before it removes any, here on 32 side by side at once. They are
 * looked at again only where something beside them went since that pass last saw them: the result is the
 * same, and the time follows the ink and not the page times its thickest spot.
 */
export function* thinnedLines(ink: Bits, bits: PackedBits): Sliced<ThinnedLines> {
  const { width, height } = ink;
  const thinner = new Thinner(bits);
  yield 0.1;
  yield* asPart(thinner.thinned(), 0.1, 0.8);
  const places = yield* asPart(placesIn({ ...bits, words: thinner.left() }), 0.8, 0.95);
  const lines = bitsOf(width, height);
  for (let n = 0; n < places.length; n++) lines.data[places[n] as number] = 1;
  return { lines, places };
}

/** A packed picture that is thinned. */
class Thinner {
  private readonly width: number;
  private readonly height: number;
  private readonly across: number;
  /** Those of the picture, one of paper before the first and behind the last. */
  private readonly words: Int32Array;
  /** By word the last pass that put it among those to be looked at, counted from 1. */
  private readonly put: Int32Array;
  private candidates = new IntList();
  /** Words that a pass changes, and the bits that are left of them. */
  private readonly changed = new IntList();
  private readonly rests = new IntList();
  /** Words with ink beside what one pass removed, and beside what the pass before that did. */
  private near = new IntList();
  private nearBefore = new IntList();

  constructor({ width, height, across, words }: PackedBits) {
    [this.width, this.height, this.across] = [width, height, across];
    this.words = new Int32Array(words.length + 2);
    this.words.set(words, 1);
    this.put = new Int32Array(words.length + 2);
    for (let n = 0; n < words.length; n++) {
      if (words[n] === 0) continue;
      this.candidates.push(n + 1);
      // The second pass has seen nothing yet when it is run first.
      this.nearBefore.push(n + 1);
    }
  }

  left(): Int32Array {
    return this.words.subarray(1, this.words.length - 1);
  }

  *thinned(): Sliced<void> {
    const { changed, rests } = this;
    let lastCount = 0;
    for (let pass = 0; ; pass++) {
      const done = 1 - 1 / (pass + 1);
      changed.clear();
      rests.clear();
      for (let from = 0; from < this.candidates.length; from += SLICE) {
        this.look(from, Math.min(from + SLICE, this.candidates.length), pass % 2 === 0);
        yield done;
      }
      if (pass > 0 && changed.length === 0 && lastCount === 0) return;
      lastCount = changed.length;
      this.takeAway(pass + 1);
      yield done;
    }
  }

  /**
   * Which pixels of some candidates go, by their eight neighbours, P2 to P9 of the paper, clockwise from
   * above: of each word that changes what is left of it.
   */
  private look(from: number, to: number, isFirst: boolean): void {
    const { words, across, height, width, candidates, changed, rests } = this;
    const [firstInner, lastInner] = [1 + across, 1 + across * (height - 1)];
    const lastBit = 1 << ((width - 1) & 31);
    for (let n = from; n < to; n++) {
      const at = candidates.at(n);
      if (at < firstInner || at >= lastInner) continue;
      const here = words[at] as number;
      const [above, below] = [at - across, at + across];
      const p2 = words[above] as number;
      const p6 = words[below] as number;
      const p4 = (here >>> 1) | ((words[at + 1] as number) << 31);
      const p8 = (here << 1) | ((words[at - 1] as number) >>> 31);
      const opens = isFirst ? ~(p4 & p6 & (p2 | p8)) : ~(p2 & p8 & (p4 | p6));
      if ((here & opens) === 0) continue;
      const p3 = (p2 >>> 1) | ((words[above + 1] as number) << 31);
      const p5 = (p6 >>> 1) | ((words[below + 1] as number) << 31);
      const p7 = (p6 << 1) | ((words[below - 1] as number) >>> 31);
      const p9 = (p2 << 1) | ((words[above - 1] as number) >>> 31);
      // Once round from paper to ink: then all ink is one arc, and so is all paper.
      let rises = ~p2 & p3;
      let twice = 0;
      let rise = ~p3 & p4;
      twice |= rises & rise;
      rises |= rise;
      rise = ~p4 & p5;
      twice |= rises & rise;
      rises |= rise;
      rise = ~p5 & p6;
      twice |= rises & rise;
      rises |= rise;
      rise = ~p6 & p7;
      twice |= rises & rise;
      rises |= rise;
      rise = ~p7 & p8;
      twice |= rises & rise;
      rises |= rise;
      rise = ~p8 & p9;
      twice |= rises & rise;
      rises |= rise;
      rise = ~p9 & p2;
      twice |= rises & rise;
      rises |= rise;
      let gone = here & opens & rises & ~twice;
      if (gone === 0) continue;
      // From two to six of them are ink: two side by side are, and two are not.
      const both = (p2 & (p3 | p9)) | (p4 & (p3 | p5)) | (p6 & (p5 | p7)) | (p8 & (p7 | p9));
      const either = (p2 | (p3 & p9)) & (p4 | (p3 & p5)) & (p6 | (p5 & p7)) & (p8 | (p7 & p9));
      gone &= both & ~either;
      const column = (at - 1) % across;
      if (column === 0) gone &= ~1;
      if (column === across - 1) gone &= ~lastBit;
      if (gone === 0) continue;
      changed.push(at);
      rests.push(here & ~gone);
    }
  }

  /** Takes away what goes, and finds what the next pass looks at; passes count from 1. */
  private takeAway(pass: number): void {
    const { words, across, put, changed, rests, candidates, near, nearBefore } = this;
    near.clear();
    candidates.clear();
    for (let n = 0; n < changed.length; n++) {
      const at = changed.at(n);
      const gone = (words[at] as number) ^ rests.at(n);
      words[at] = rests.at(n);
      // Beside it too, where the outermost of its pixels went.
      const [first, last] = [at - (gone & 1), at + (gone >>> 31)];
      // No pixel of the picture's own edge goes: there is a row above and below.
      for (let row = -across; row <= across; row += across) {
        for (let beside = first + row; beside <= last + row; beside++) {
          if (put[beside] === pass || words[beside] === 0) continue;
          put[beside] = pass;
          near.push(beside);
          candidates.push(beside);
        }
      }
    }
    for (let n = 0; n < nearBefore.length; n++) {
      const word = nearBefore.at(n);
      if (put[word] !== pass && words[word] !== 0) candidates.push(word);
    }
    [this.near, this.nearBefore] = [nearBefore, near];
  }
}
