import { expose, transfer } from "comlink";
import type { Box } from "../../base/index.ts";
import type { Picture } from "../../job/index.ts";
import {
  estimateWhite,
  type PhotoWhite,
  type Rgba,
  type SeenWire,
  type Sliced,
  SPOT_ROOM,
  seenWire,
  whiteAt,
} from "../../scan/index.ts";
import type { PhotoSpot } from "./open-colour.ts";
import { runSliced } from "./run-sliced.ts";
import { decoded, type SourcePicture } from "./source-picture.ts";

/** A photo read, and what is white in it. */
export interface ReadColours {
  readonly white: PhotoWhite;
}

/** What a spot shows, and a small picture of it. */
export interface SpotColours {
  /** Null where it is too bright to tell a colour. */
  readonly seen: SeenWire | null;
  /** The spot in its middle; the asker's to close. */
  readonly crop: ImageBitmap;
}

/** Pixels of the photo a side that its white is looked for in: enough for any label or card. */
const WHITE_SIDE = 360;
/** Pixels to a radius of a spot: more tell no more of a wire's colour. */
const MOST_REACH = 12;
/** What the small picture of a spot shows: radii of the spot each way. */
const CROP = 3.2;

/** Raised by every tap: what was asked before it is called off. */
let round = 0;
/** The only decoded picture there is. */
let source: SourcePicture | null = null;

const opened = (): SourcePicture => {
  if (!source) throw new Error("asked before there was a picture");
  return source;
};

/** A photo of wires in a thread of its own. */
const colourWorker = {
  async open(picture: Picture): Promise<ReadColours> {
    source?.close();
    source = null;
    source = await decoded(picture);
    const { width, height } = source;
    const scale = Math.min(1, WHITE_SIDE / Math.max(width, height));
    const whole = { left: 0, top: 0, right: width, bottom: height };
    return { white: estimateWhite(source.part(whole, scale)) };
  },

  /** The white from a spot that somebody says is white; null where it is too bright or too dark. */
  async white({ at, reach }: PhotoSpot): Promise<PhotoWhite | null> {
    const { pixels, middle, scale } = around({ at, reach }, reach + 2);
    return whiteAt(pixels, middle, reach * scale);
  },

  async look(spot: PhotoSpot, white: PhotoWhite): Promise<SpotColours> {
    round++;
    const begun = round;
    const isOff = () => begun !== round;
    const seen = await runSliced(lookedAt(spot, white), () => {}, isOff);
    const crop = await opened().bitmap(boxRound(spot, CROP * spot.reach));
    return transfer({ seen, crop }, [crop]);
  },

  callOff(): void {
    round++;
  },
};

function* lookedAt(spot: PhotoSpot, white: PhotoWhite): Sliced<SeenWire | null> {
  const { pixels, middle, scale } = around(spot, spot.reach * SPOT_ROOM + 2);
  yield 0.1;
  return yield* seenWire(pixels, middle, spot.reach * scale, white);
}

const boxRound = ({ at: [x, y] }: PhotoSpot, room: number): Box => ({
  left: Math.floor(x - room),
  top: Math.floor(y - room),
  right: Math.ceil(x + room),
  bottom: Math.ceil(y + room),
});

/** Only what lies near a spot is read, and made no finer than is of use. */
function around(spot: PhotoSpot, room: number) {
  const photo = opened();
  const scale = Math.min(1, MOST_REACH / spot.reach);
  const box = boxRound(spot, room);
  const within = {
    left: Math.max(0, box.left),
    top: Math.max(0, box.top),
    right: Math.min(photo.width, box.right),
    bottom: Math.min(photo.height, box.bottom),
  };
  const middle = [(spot.at[0] - within.left) * scale, (spot.at[1] - within.top) * scale] as const;
  const pixels: Rgba = photo.part(within, scale);
  return { pixels, middle, scale };
}

export type ColourWorker = typeof colourWorker;

expose(colourWorker);
