import type { Point } from "../../base/index.ts";
import {
  asPart,
  type FollowedLines,
  followedLines,
  netAt,
  netsOf,
  type PreparedPage,
  type Traced,
} from "../../scan/index.ts";
import type { FoundNet, TraceAsk } from "../../session/index.ts";
import { breathe, type Progress, runSliced } from "./run-sliced.ts";

/** Share of the time that it takes to follow lines before nets are made of them. */
const FOLLOWING = 0.8;

const quietly: Progress = () => {};

/** What was asked last about the lines of a page, and what is known of them. */
export interface AskedLines {
  /** Nets that come to a pin. Once they are told, all others are made while nobody waits. */
  trace(tell: Progress, isOff: () => boolean): Promise<Traced>;
  /** The net nearest to a place, with pins or without: at hand, once the others are made. */
  netAt(at: Point, reach: number): Promise<FoundNet | null>;
}

/** `isOld`: whether something else was asked since, so that nobody wants to know any more. */
export function askedLines(page: PreparedPage, ask: TraceAsk, isOld: () => boolean): AskedLines {
  let lines: Promise<FollowedLines> | null = null;
  let all: Promise<Traced> | null = null;

  const follow = (tell: Progress, isOff: () => boolean): Promise<FollowedLines> => {
    const work = asPart(followedLines(page, ask, ask.terminals), 0, FOLLOWING);
    const own = runSliced(work, tell, isOff);
    lines = own;
    return own;
  };

  const makeAll = async (): Promise<Traced> => {
    // What was called off before all lines were followed is followed once more.
    const followed = (await lines?.catch(() => null)) ?? (await follow(quietly, isOld));
    const made = await runSliced(netsOf(followed, "all"), quietly, isOld);
    lines = null;
    return made;
  };

  const allNets = (): Promise<Traced> => {
    all ??= makeAll();
    return all;
  };

  return {
    async trace(tell, isOff) {
      const followed = await follow(tell, isOff);
      const work = asPart(netsOf(followed, "with-terminals"), FOLLOWING, 1);
      const traced = await runSliced(work, tell, isOff);
      // Not before the answer has gone out.
      void breathe()
        .then(allNets)
        .catch(() => {});
      return traced;
    },
    async netAt(at, reach) {
      const traced = await allNets();
      const net = netAt(traced, at, reach);
      return net && { net, questions: traced.questions.filter((one) => one.nets.includes(net.id)) };
    },
  };
}
