import { expose, transfer } from "comlink";
import type { Box, Point } from "../../base/index.ts";
import type { Picture } from "../../job/index.ts";
import {
  asPart,
  findParts,
  type Grey,
  type PreparedPage,
  preparePage,
  type SymbolProposal,
  type SymbolSearch,
  type Traced,
  type WordCrop,
  wordBoxesOf,
} from "../../scan/index.ts";
import type { FoundNet, ReadyPage, TraceAsk } from "../../session/index.ts";
import { type AskedLines, askedLines } from "./asked-lines.ts";
import { cropOf } from "./picture-crop.ts";
import { CalledOff, type Progress, runSliced } from "./run-sliced.ts";
import { decoded } from "./source-picture.ts";

const TOO_LARGE =
  "This picture has more than 40 megapixels. Square it up first: that brings it to a size this device can hold.";

/** Raised by every calling off: work begun before it ends. */
let round = 0;
let picture: Picture | null = null;
let page: PreparedPage | null = null;
let asked: AskedLines | null = null;

const prepared = (): PreparedPage => {
  if (!page) throw new Error("asked before there was a picture");
  return page;
};

/** The picture of one sheet in a thread of its own. */
const traceWorker = {
  async open(next: Picture, tell: Progress): Promise<ReadyPage> {
    const begun = round;
    const isOff = () => begun !== round;
    page = null;
    asked = null;
    picture = next;
    let grey: Grey;
    const source = await decoded(next);
    try {
      if (isOff()) throw new CalledOff("called off");
      if (source.shrink < 1) throw new Error(TOO_LARGE);
      grey = await runSliced(asPart(source.greys(), 0, 0.2), tell, isOff);
    } finally {
      source.close();
    }
    const { width, height } = grey;
    page = await runSliced(asPart(preparePage(grey), 0.2, 1), tell, isOff);
    return { width, height, lineWidth: page.lineWidth / page.scale };
  },

  async trace(ask: TraceAsk, tell: Progress): Promise<Traced> {
    const begun = round;
    const own: AskedLines = askedLines(prepared(), ask, () => asked !== own);
    asked = own;
    return own.trace(tell, () => begun !== round);
  },

  async netAt(at: Point, reach: number): Promise<FoundNet | null> {
    return asked ? asked.netAt(at, reach) : null;
  },

  async findWords(tell: Progress): Promise<readonly WordCrop[]> {
    const begun = round;
    return runSliced(wordBoxesOf(prepared()), tell, () => begun !== round);
  },

  async findParts(ask: SymbolSearch, tell: Progress): Promise<readonly SymbolProposal[]> {
    const begun = round;
    return runSliced(findParts(prepared(), ask), tell, () => begun !== round);
  },

  async crop(box: Box): Promise<ImageBitmap | null> {
    const bitmap = picture && (await cropOf(picture, box));
    return bitmap && transfer(bitmap, [bitmap]);
  },

  callOff(): void {
    round++;
  },
};

export type TraceWorker = typeof traceWorker;

expose(traceWorker);
