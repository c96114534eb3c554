import type { Box, Point } from "../../base/index.ts";
import type { LineAnswer, Picture } from "../../job/index.ts";

/** What is told of long work, 0 to 1. */
export type TellShare = (share: number) => void;

/** Facts of a picture made ready for following lines. */
export interface ReadyPage {
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  /** Width of its usual line, pixels. */
  readonly lineWidth: number;
}

/** What lines are followed between. All in pixels of the picture. */
export interface TraceAsk {
  readonly terminals: Readonly<Record<string, Point>>;
  readonly parts: readonly Box[];
  readonly words: readonly Box[];
  readonly answers: readonly LineAnswer[];
}

/**
 * One picture in hand, wherever it is worked on. Calls that were called off reject with an error named
 * `CalledOff`; others reject with a sentence for the user.
 */
export interface TracePort {
  /** Reads the picture and makes it ready; the one before is forgotten. */
  open(picture: Picture, tell: TellShare): Promise<ReadyPage>;
  /** Breaks off what is under way; the picture stays in hand. */
  callOff(): void;
  /** The worker is let go, with its memory. */
  close(): void;
}

export type OpenTracePort = () => TracePort;
