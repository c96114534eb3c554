import type { Box } from "../../../base/index.ts";
import {
  firstLook,
  furtherLooks,
  hasFaintEnds,
  otherWayRound,
  pgmOf,
  roomyLook,
  type WordCrop,
  type WordLook,
  type WordTurn,
} from "../../../scan/index.ts";
import { meaningsOf, tidied } from "./word-meaning.ts";

/** What a reader of print makes of one picture. */
export interface RawReading {
  readonly text: string;
  /** How sure it is of the least sure word, 0 to 100. */
  readonly sure: number;
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
  /** 0 to 100. */
  readonly sure: number;
  /** What else it was read as, the likelier first. */
  readonly others: readonly string[];
}

/** From here on a reading counts as sure. */
export const SURE = 75;
/** Whether it is surely print: a bar of a ground's symbol is easily taken for a single letter. */
export const isSurelyPrint = ({ text, sure }: ReadWord): boolean => sure >= SURE && text.length > 1;

/** A first look so sure, at something that makes sense, needs no second one. */
const SURE_AT_ONCE = 82;
/** Two looks that agree are surer than each, but a third adds little: they are of the same print. */
const AGREED = 15;
const MOST_AGREED = 2;

const makesSense = (text: string) => meaningsOf(text).some(({ mended }) => !mended);
const sameText = (a: string, b: string) => a.replaceAll(" ", "") === b.replaceAll(" ", "");

/** Reads one crop: again, in other ways, where the first look leaves doubts. Null where nothing is legible. */
export async function readWord(reader: WordReader, crop: WordCrop): Promise<ReadWord | null> {
  const look = async ({ grey, as }: WordLook): Promise<RawReading> => {
    const { text, sure } = await reader.read({
      picture: pgmOf(grey),
      as,
      isCapitals: crop.isCapitals,
    });
    return { text: tidied(text), sure };
  };
  const looks = [await look(firstLook(crop))];
  for (const further of furtherLooks(crop)) {
    if (isSettled(looks)) break;
    looks.push(await look(further));
  }
  let best = chosen(looks);
  let turn = crop.turn;
  if (turn !== 0 && (best === null || best.sure < SURE)) {
    const other = await look(otherWayRound(crop));
    if (other.text !== "" && makesSense(other.text) && other.sure > (best?.sure ?? 0)) {
      best = { ...other, others: best ? [best.text, ...best.others] : [] };
      turn = turn === 270 ? 90 : 270;
    }
  }
  if (hasFaintEnds(crop)) best = withFaint(await look(roomyLook(crop)), best);
  if (best && crop.isCut) best = { ...best, sure: Math.min(best.sure, SURE - 1) };
  if (!best || isScratch(best)) return null;
  const { left, top } = crop.box;
  const id = `${Math.round(left)},${Math.round(top)}`;
  return { id, box: crop.box, turn, tall: crop.tall, ...best };
}

/** A piece of a symbol or a scratch, which the reader takes for a letter or two without believing it. */
const isScratch = ({ text, sure }: RawReading): boolean => sure < 20 && text.length <= 2;

/** Where a faint letter may be missing nothing is sure; with it the text is longer. */
function withFaint(roomy: RawReading, best: Chosen | null): Chosen | null {
  const doubted = best && { ...best, sure: Math.min(best.sure, SURE - 1) };
  const isLonger = roomy.text.length > (best?.text.length ?? 0) && makesSense(roomy.text);
  if (!isLonger || (best && !roomy.text.includes(best.text))) return doubted;
  const others = best ? [best.text, ...best.others] : [];
  return {
    text: roomy.text,
    sure: Math.min(roomy.sure, SURE - 1),
    others: others.filter((text) => text !== roomy.text),
  };
}

/** Whether more looks would hardly tell more: clear at once, or two agree, or nothing is there. */
function isSettled(looks: readonly RawReading[]): boolean {
  const [first, second, ...more] = looks;
  if (!first) return false;
  if (first.sure >= SURE_AT_ONCE && makesSense(first.text)) return true;
  if (!second) return false;
  if (first.text === "" && second.text === "") return true;
  const agrees = [second, ...more].some(({ text }) => text !== "" && sameText(text, first.text));
  return agrees && makesSense(first.text) && Math.max(...looks.map(({ sure }) => sure)) >= CLEAR;
}

/** Two looks settle it where one of them is so sure. */
const CLEAR = 60;

interface Chosen extends RawReading {
  readonly others: readonly string[];
}

/** What most looks say, sense before nonsense; null where no look made anything of it. */
function chosen(looks: readonly RawReading[]): Chosen | null {
  const found: { text: string; sure: number; times: number }[] = [];
  for (const { text, sure } of looks) {
    if (text === "") continue;
    const known = found.find((one) => sameText(one.text, text));
    if (!known) found.push({ text, sure, times: 1 });
    else {
      known.times++;
      // The text with gaps tells more.
      if (text.length > known.text.length) known.text = text;
      known.sure = Math.max(known.sure, sure);
    }
  }
  const weight = ({ text, sure, times }: (typeof found)[number]) =>
    sure + AGREED * (times - 1) + (makesSense(text) ? 40 : meaningsOf(text).length > 0 ? 15 : 0);
  found.sort((a, b) => weight(b) - weight(a));
  const [best, ...others] = found;
  if (!best) return null;
  const rival = others.some((one) => makesSense(one.text) && one.sure > best.sure - AGREED);
  const agreed = Math.min(96, best.sure + AGREED * Math.min(MOST_AGREED, best.times - 1));
  return {
    text: best.text,
    sure: Math.round(rival ? Math.min(agreed, SURE - 1) : agreed),
    others: others.map(({ text }) => text),
  };
}
