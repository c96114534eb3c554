import { expose, transfer } from "comlink";
import { type Box, boundsOf, type Point } from "../../base/index.ts";
import type { Picture } from "../../job/index.ts";
import {
  asPart,
  type Bow,
  bowIn,
  bowNear,
  type CleanStep,
  clean,
  type Grey,
  type ProposedCorners,
  planOf,
  planOfView,
  proposedCorners,
  type Quad,
  type ResultView,
  type Rgba,
  type Sliced,
  type Squaring,
  type SquaringPlan,
  scaledSteps,
  toPicture,
  warp,
} from "../../scan/index.ts";
import { encodePicture } from "./encode-picture.ts";
import { CalledOff, type Progress, runSliced } from "./run-sliced.ts";
import { decoded, type SourcePicture } from "./source-picture.ts";

/** What is to be seen of a result. */
export interface ResultAsk extends ResultView {
  readonly squaring: Squaring;
  readonly cleaning: readonly CleanStep[];
}

export interface MadePicture {
  readonly picture: Picture;
  readonly width: number;
  readonly height: number;
}

/** Pixels around a view that cleaning looks at too: the paper's tone and a letter's company. */
const ROUND = 48;
/** The desk says why before it asks; see `noPlanWords`. */
const NO_PLAN = "No picture can be made with these corners, this margin and this tilt.";
/** Pixels of the picture read for each of a view's, so that thin lines do not break. */
const FINER = 1.4;

/** Raised by every calling off: work begun before it ends. */
let round = 0;
let file: Picture | null = null;
/** The only full-size picture in hand, apart from the result while it is made. */
let source: SourcePicture | null = null;
let grey: Promise<Grey> | null = null;
/** The last cut-out read for a view: most looks differ in cleaning alone. */
let cutOut: { readonly key: string; readonly pixels: Rgba } | null = null;

async function sourceAtHand(): Promise<SourcePicture> {
  if (!file) throw new Error("asked before it was opened");
  source ??= await decoded(file);
  return source;
}

const greyAtHand = async (): Promise<Grey> => {
  const at = await sourceAtHand();
  grey ??= untilClosed(at.greys(), at);
  return grey;
};

/** Work on a picture that is off only when another one is opened, or this one is let go. */
const untilClosed = <T>(work: Sliced<T>, at: SourcePicture): Promise<T> =>
  runSliced(
    work,
    () => {},
    () => source !== at,
  );

function letGo(): void {
  source?.close();
  source = null;
  grey = null;
  cutOut = null;
}

/** A pixel's middle is half a pixel from its edge, at either size. */
const resized = (quad: Quad, by: number): Quad =>
  quad.map(([x, y]): Point => [(x + 0.5) * by - 0.5, (y + 0.5) * by - 0.5]) as unknown as Quad;

const trueBow = (bow: Bow | null, { width, height }: SourcePicture): Bow | null =>
  bow && bowIn(width, height, bow.k);

/** One picture of a sheet being squared up and cleaned, in a thread of its own. */
const squareWorker = {
  async open(picture: Picture): Promise<{ width: number; height: number }> {
    letGo();
    file = picture;
    const { width, height } = await sourceAtHand();
    return { width, height };
  },

  async propose(): Promise<ProposedCorners | null> {
    const at = await sourceAtHand();
    const found = await untilClosed(proposedCorners(await greyAtHand()), at);
    return (
      found && {
        ...found,
        corners: resized(found.corners, 1 / at.shrink),
        bow: trueBow(found.bow, at),
      }
    );
  },

  async bowNear(corners: Quad): Promise<Bow | null> {
    const at = await sourceAtHand();
    return trueBow(bowNear(await greyAtHand(), resized(corners, at.shrink)), at);
  },

  /** A box of the picture as it came, edges whole pixels. */
  async spot(box: Box): Promise<ImageBitmap> {
    const bitmap = await (await sourceAtHand()).bitmap(box);
    return transfer(bitmap, [bitmap]);
  },

  /** The picture as it came, no larger than so many pixels either way. */
  async whole(most: number): Promise<ImageBitmap> {
    const at = await sourceAtHand();
    const scale = Math.min(1, most / Math.max(at.width, at.height));
    const box = { left: 0, top: 0, right: at.width, bottom: at.height };
    return bitmapOf(at.part(box, scale));
  },

  async look(ask: ResultAsk): Promise<ImageBitmap> {
    const begun = round;
    const at = await sourceAtHand();
    const plan = planOf(ask.squaring, at);
    if (!plan) throw new Error(NO_PLAN);
    const room = ROUND / ask.scale;
    const box = {
      left: Math.max(0, Math.floor(ask.box.left - room)),
      top: Math.max(0, Math.floor(ask.box.top - room)),
      right: Math.min(plan.width - 1, Math.ceil(ask.box.right + room)),
      bottom: Math.min(plan.height - 1, Math.ceil(ask.box.bottom + room)),
    };
    const isOff = () => begun !== round;
    const seen = await runSliced(viewOf(at, plan, box, ask.scale), () => {}, isOff);
    const steps = scaledSteps(ask.cleaning, ask.scale);
    await runSliced(clean(seen, steps), () => {}, isOff);
    const kept = {
      left: Math.round((ask.box.left - box.left) * ask.scale),
      top: Math.round((ask.box.top - box.top) * ask.scale),
      width: Math.max(1, Math.round((ask.box.right - ask.box.left + 1) * ask.scale)),
      height: Math.max(1, Math.round((ask.box.bottom - ask.box.top + 1) * ask.scale)),
    };
    return bitmapOf(seen, kept);
  },

  /** The whole result, ready to be stored. */
  async make(
    squaring: Squaring,
    cleaning: readonly CleanStep[],
    tell: Progress,
  ): Promise<MadePicture> {
    const begun = round;
    const at = await sourceAtHand();
    const plan = planOf(squaring, at);
    if (!plan) throw new Error(NO_PLAN);
    const isOff = () => begun !== round;
    const whole = { left: 0, top: 0, right: plan.width - 1, bottom: plan.height - 1 };
    const cut = { left: 0, top: 0, scale: at.shrink };
    const share = cleaning.length === 0 ? 0.9 : 0.4;
    const made = await runSliced(
      warpedOnce(at, planOfView(plan, { box: whole, scale: 1 }, cut)),
      (done) => tell(share * done),
      isOff,
    );
    await runSliced(clean(made, cleaning), (done) => tell(share + (0.9 - share) * done), isOff);
    tell(0.9);
    const picture = await encodePicture(made);
    if (isOff()) throw new CalledOff("called off");
    return transfer({ picture, width: made.width, height: made.height }, [
      picture.bytes.buffer as ArrayBuffer,
    ]);
  },

  callOff(): void {
    round++;
  },
};

/**
 * The whole picture warped. Once its pixels are read the decoded picture only takes up room; it is read
 * again when asked for.
 */
function* warpedOnce(at: SourcePicture, plan: SquaringPlan): Sliced<Rgba> {
  const pixels = yield* asPart(at.colours(), 0, 0.3);
  letGo();
  return yield* asPart(warp(pixels, plan), 0.3, 1);
}

/** The pixels of a box of the result, made from no more of the picture than it shows. */
function viewOf(at: SourcePicture, plan: SquaringPlan, box: Box, scale: number) {
  const seen = boundsOf(edgeOf(box).map((point) => toPicture(plan, point)));
  const within = (value: number, most: number) => Math.max(0, Math.min(most, value));
  const part = {
    left: within(Math.floor(seen?.left ?? 0) - 2, at.width - 1),
    top: within(Math.floor(seen?.top ?? 0) - 2, at.height - 1),
    right: within(Math.ceil(seen?.right ?? 0) + 3, at.width),
    bottom: within(Math.ceil(seen?.bottom ?? 0) + 3, at.height),
  };
  const [wide, high] = [Math.max(1, part.right - part.left), Math.max(1, part.bottom - part.top)];
  const pixels = scale * scale * (box.right - box.left + 1) * (box.bottom - box.top + 1);
  const finer = Math.min(at.shrink, FINER * Math.sqrt(pixels / (wide * high)));
  const cut = { left: part.left, top: part.top, scale: finer };
  const key = JSON.stringify([part, finer]);
  if (cutOut?.key !== key) {
    const whole = { ...part, right: part.left + wide, bottom: part.top + high };
    cutOut = { key, pixels: at.part(whole, finer) };
  }
  return warp(cutOut.pixels, planOfView(plan, { box, scale }, cut));
}

/** Points along the edge of a box: a bowed page may reach furthest anywhere on it. */
function edgeOf({ left, top, right, bottom }: Box): Point[] {
  return Array.from({ length: 17 }, (_, n) => {
    const [x, y] = [left + ((right - left) * n) / 16, top + ((bottom - top) * n) / 16];
    return [[x, top] as const, [x, bottom] as const, [left, y] as const, [right, y] as const];
  }).flat();
}

async function bitmapOf(
  { width, height, data }: Rgba,
  kept = { left: 0, top: 0, width, height },
): Promise<ImageBitmap> {
  const image = new ImageData(data as Uint8ClampedArray<ArrayBuffer>, width, height);
  const bitmap = await createImageBitmap(image, kept.left, kept.top, kept.width, kept.height);
  return transfer(bitmap, [bitmap]);
}

export type SquareWorker = typeof squareWorker;

expose(squareWorker);
