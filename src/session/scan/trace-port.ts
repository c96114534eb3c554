import type { Box, Point } from "../../base/index.ts";
import type { Picture } from "../../job/index.ts";
import type {
  LineContext,
  LineQuestion,
  SymbolProposal,
  SymbolSearch,
  Traced,
  TracedNet,
  WordCrop,
} from "../../scan/index.ts";

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
export interface TraceAsk extends LineContext {
  /** Pins, by their names. */
  readonly terminals: Readonly<Record<string, Point>>;
}

/** A net that no pin need touch, with the doubtful places that its lines come to. */
export interface FoundNet {
  readonly net: TracedNet;
  readonly questions: readonly LineQuestion[];
}

/**
 * One picture in hand, wherever it is worked on. Calls that were called off reject with an error named
 * `CalledOff`; others reject with a sentence for the user, all of them with one named `BrokenThread`
 * once their thread has failed.
 */
export interface TracePort {
  /** Reads the picture and makes it ready; the one before is forgotten. */
  open(picture: Picture, tell: TellShare): Promise<ReadyPage>;
  /** Every net that comes to a pin, and the questions whose answers matter to those. */
  trace(ask: TraceAsk, tell: TellShare): Promise<Traced>;
  /** Of what `trace` was asked last, the net nearest to a place, with pins or without; null beyond `reach` pixels. */
  netAt(at: Point, reach: number): Promise<FoundNet | null>;
  /** Every run of words on the picture, cut out for a reader of print. */
  findWords(tell: TellShare): Promise<readonly WordCrop[]>;
  /** Everything on the picture that looks like a part's symbol, the likeliest first. */
  findParts(ask: SymbolSearch, tell: TellShare): Promise<readonly SymbolProposal[]>;
  /** A piece of the picture as it is, for a close look; null where nothing of it is inside. */
  crop(box: Box): Promise<ImageBitmap | null>;
  /** Breaks off what is under way; the picture stays in hand. */
  callOff(): void;
  /** The worker is let go, with its memory. */
  close(): void;
}

export type OpenTracePort = () => TracePort;
