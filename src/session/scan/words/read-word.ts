import type { Box } from "../../../base/index.ts";
import {
  firstLook,
  fitsInk,
  furtherLooks,
  type Grey,
  hasFaintEnds,
  otherWayRound,
  pgmOf,
  READ_TALL,
  type ReadLetter,
  roomyLook,
  type WordCrop,
  type WordLook,
  type WordTurn,
} from "../../../scan/index.ts";
import { isTelling, letterByLetter, withHyphen } from "./struck-word.ts";
import { meaningsOf, tidied } from "./word-meaning.ts";

/** What a reader of print makes of one picture. */
export interface RawReading {
  readonly text: string;
  /** How sure it is of the least sure word, 0 to 100. */
  readonly sure: number;
  /** Its letters without gaps, in reading order; empty where the reader does not tell. */
  readonly letters: readonly ReadLetter[];
}

/** One picture to be read. */
export interface Print {
  /** The bytes of a picture file. */
  readonly picture: Uint8Array;
  readonly as: WordLook["as"];
  /** Whether only capitals, digits and signs are to be expected. */
  readonly isCapitals: boolean;
}

/** Reads print, wherever it runs. */
export interface WordReader {
  /** How many pictures it can read at a time. */
  readonly lanes: number;
  /** Rejects with a sentence for the user. */
  read(print: Print): Promise<RawReading>;
  /** Lets its memory go. What is under way is broken off. */
  close(): void;
}

/** Why what was read may be wrong or incomplete. */
export type ReadDoubt =
  /** The print itself is hard to read. */
  | "unclear"
  /** Read again, in another size, it said something else. */
  | "otherwise"
  /** A line touches its letters or runs through them. */
  | "cut"
  /** Something dark that is none of its letters lies among them or at its ends. */
  | "crowded"
  /** Something faint stands at its ends. */
  | "faint"
  /** Its ink does not fit the letters that were read. */
  | "misfit"
  /** It is likely a piece of a longer label that a line or a stain parted, or its hyphen leads nowhere. */
  | "torn"
  /** It is neither a wire's print nor a name, a value or a mark, but has figures. */
  | "senseless"
  /** Other wires of the sheet bear another kind of print. */
  | "unlike";

/** A run of words of the picture, read. */
export interface ReadWord {
  /** By its place; the same for the same picture. */
  readonly id: string;
  /** Pixels of the picture. */
  readonly box: Box;
  readonly turn: WordTurn;
  /** Height of its letters, pixels of the picture. */
  readonly tall: number;
  readonly text: string;
  /** 0 to 100; less than `SURE` wherever there is a doubt. */
  readonly sure: number;
  /** In the order of `ReadDoubt`; empty for a word that is sure. */
  readonly doubts: readonly ReadDoubt[];
  /** What else it was read as, the likelier first. */
  readonly others: readonly string[];
  /** Whether it is surely print, whatever it says: a bar of a ground's symbol is easily taken for a single letter. */
  readonly isPrint: boolean;
}

/** From here on a reading counts as sure. */
export const SURE = 75;

/** A first look so sure, at something that makes sense, needs no second one. */
const SURE_AT_ONCE = 82;
/** Of so few letters nearly everything makes sense: they are always looked at twice. */
const SHORT = 3;
/** Two looks that agree are surer than each, but a third adds little: they are of the same print. */
const AGREED = 15;
const MOST_AGREED = 2;

/** `31-`, and `-8 BK`. */
const TORN = /\d ?[-–—]$|^[-–—] ?\d/;

const makesSense = (text: string) => meaningsOf(text).some(({ mended }) => !mended);
const sameText = (a: string, b: string) => a.replaceAll(" ", "") === b.replaceAll(" ", "");

/** A look with what was read in it. */
interface Look extends RawReading {
  readonly grey: Grey;
  /** Whether a number in it begins or ends with a hyphen: what was on the other side is not there. */
  readonly isTorn: boolean;
  /** Whether the line was left in its letters. */
  readonly isBridged: boolean;
}

/** Reads one crop: again, in other ways, where the first look leaves doubts. Null where nothing is legible. */
export async function readWord(reader: WordReader, crop: WordCrop): Promise<ReadWord | null> {
  const look = async ({ grey, as }: WordLook, isBridged = false): Promise<Look> => {
    const { text, sure, letters } = await reader.read({
      picture: pgmOf(grey),
      as,
      isCapitals: crop.isCapitals,
    });
    const tidy = tidied(text);
    return {
      isTorn: TORN.test(text.trim()),
      text: crop.isCut ? withHyphen({ text: tidy, letters }, READ_TALL) : tidy,
      sure,
      letters,
      grey,
      isBridged,
    };
  };
  const looks = [await look(firstLook(crop))];
  for (const further of furtherLooks(crop)) {
    if (isSettled(looks)) break;
    looks.push(await look(further));
  }
  if (crop.bridged) {
    const bridged = { ...crop, grey: crop.bridged };
    for (const further of [firstLook(bridged), roomyLook(bridged)])
      looks.push(await look(further, true));
  }
  let best = chosen(looks, crop.isCut);
  let turn = crop.turn;
  if (turn !== 0 && (best === null || best.sure < SURE)) {
    const other = await look(otherWayRound(crop));
    if (other.text !== "" && makesSense(other.text) && other.sure > (best?.sure ?? 0)) {
      best = {
        ...other,
        isRivalled: best !== null,
        others: best ? [best.text, ...best.others] : [],
      };
      turn = turn === 270 ? 90 : 270;
    }
  }
  const isFaint = hasFaintEnds(crop);
  if (isFaint) best = withFaint(await look(roomyLook(crop)), best);
  if (!best || isScratch(best)) return null;
  const doubts = doubtsOf(best, crop, isFaint);
  const { left, top } = crop.box;
  const { text, others } = best;
  return {
    id: `${Math.round(left)},${Math.round(top)}`,
    box: crop.box,
    turn,
    tall: crop.tall,
    text,
    sure: doubts.length === 0 ? best.sure : Math.min(best.sure, SURE - 1),
    doubts,
    others,
    isPrint: text.length > 1 && best.sure >= SURE && !crop.isCut && !isFaint && !best.isRivalled,
  };
}

function doubtsOf(best: Chosen, crop: WordCrop, isFaint: boolean): ReadDoubt[] {
  const doubts: ReadDoubt[] = [];
  if (best.sure < SURE) doubts.push("unclear");
  if (best.isRivalled) doubts.push("otherwise");
  if (crop.isCut) doubts.push("cut");
  if (crop.isCrowded) doubts.push("crowded");
  if (isFaint) doubts.push("faint");
  if (isMisfit(best)) doubts.push("misfit");
  if (best.isTorn) doubts.push("torn");
  return doubts;
}

function isMisfit({ grey, letters }: Look): boolean {
  if (letters.length === 0) return false;
  return !fitsInk(grey, letters);
}

/** A piece of a symbol or a scratch, which the reader takes for a letter or two without believing it. */
const isScratch = ({ text, sure }: RawReading): boolean => sure < 20 && text.length <= 2;

/** Where a faint letter may be missing, with it the text is longer. */
function withFaint(roomy: Look, best: Chosen | null): Chosen | null {
  const isLonger = roomy.text.length > (best?.text.length ?? 0) && makesSense(roomy.text);
  if (!isLonger || (best && !roomy.text.includes(best.text))) return best;
  const others = best ? [best.text, ...best.others] : [];
  return { ...roomy, isRivalled: false, others: others.filter((text) => text !== roomy.text) };
}

/** Whether more looks would hardly tell more: clear at once, or two agree, or nothing is there. */
function isSettled(looks: readonly RawReading[]): boolean {
  const [first, second, ...more] = looks;
  if (!first) return false;
  const isLong = first.text.length > SHORT;
  if (first.sure >= SURE_AT_ONCE && isLong && makesSense(first.text)) return true;
  if (!second) return false;
  if (first.text === "" && second.text === "") return true;
  const agrees = [second, ...more].some(({ text }) => text !== "" && sameText(text, first.text));
  return agrees && makesSense(first.text) && Math.max(...looks.map(({ sure }) => sure)) >= CLEAR;
}

/** Two looks settle it where one of them is so sure. */
const CLEAR = 60;

interface Chosen extends Look {
  readonly others: readonly string[];
  /** Whether another look said something else that makes sense, and was hardly less sure of it. */
  readonly isRivalled: boolean;
}

/** What makes sense is worth so much, and what does once letters are put right so much. */
const SENSE = 40;
const MENDED_SENSE = 15;
/** What chance hardly makes of a struck word is worth so much more; what only a look with the line in it says loses so much. */
const TELLING = 40;
const BRIDGED = 15;

/** What most looks say, sense before nonsense; null where no look made anything of it. */
function chosen(looks: readonly Look[], isCut: boolean): Chosen | null {
  const found: { look: Look; text: string; sure: number; times: number; isBridged: boolean }[] = [];
  for (const look of looks) {
    const { text, sure } = look;
    if (text === "") continue;
    const known = found.find((one) => sameText(one.text, text));
    if (!known) found.push({ look, text, sure, times: 1, isBridged: look.isBridged });
    else {
      known.times++;
      known.isBridged &&= look.isBridged;
      // The text with gaps tells more.
      if (text.length > known.text.length) Object.assign(known, { look, text });
      known.sure = Math.max(known.sure, sure);
    }
  }
  const weight = ({ text, sure, times, isBridged }: (typeof found)[number]) =>
    sure +
    AGREED * (times - 1) +
    (makesSense(text) ? SENSE : meaningsOf(text).length > 0 ? MENDED_SENSE : 0) +
    (isCut && isTelling(text) ? TELLING : 0) -
    (isBridged ? BRIDGED : 0);
  found.sort((a, b) => weight(b) - weight(a));
  const [best, ...others] = found;
  if (!best) return null;
  if (isCut && !isTelling(best.text)) {
    const text = letterByLetter(found.map((one) => ({ text: one.text, weight: weight(one) })));
    if (text !== null)
      return {
        ...best.look,
        text,
        sure: Math.min(best.sure, SURE - 1),
        isRivalled: true,
        others: found.map((one) => one.text),
      };
  }
  return {
    ...best.look,
    sure: Math.round(Math.min(96, best.sure + AGREED * Math.min(MOST_AGREED, best.times - 1))),
    isRivalled: others.some((one) => makesSense(one.text) && one.sure > best.sure - AGREED),
    others: others.map(({ text }) => text),
  };
}
