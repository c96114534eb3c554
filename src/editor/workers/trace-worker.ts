import { expose } from "comlink";
import type { Picture } from "../../job/index.ts";
import { greyFrom, type PreparedPage, preparePage } from "../../scan/index.ts";
import type { ReadyPage } from "../../session/index.ts";
import { pixelsOf } from "./pixels-of.ts";
import { CalledOff, type Progress } from "./run-sliced.ts";

/** Raised by every calling off: work begun before it ends. */
let round = 0;
let page: PreparedPage | null = null;

/** The picture of one sheet in a thread of its own. */
const traceWorker = {
  async open(picture: Picture, tell: Progress): Promise<ReadyPage> {
    const begun = round;
    page = null;
    const grey = greyFrom(await pixelsOf(picture));
    if (begun !== round) throw new CalledOff("called off");
    tell(0.2);
    page = preparePage(grey);
    return { width: grey.width, height: grey.height, lineWidth: page.lineWidth / page.scale };
  },
  callOff(): void {
    round++;
  },
};

export type TraceWorker = typeof traceWorker;

expose(traceWorker);
