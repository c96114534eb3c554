import type { RoleName } from "../../../src/job/index.ts";

/** Which end of the connector the job has as its module. */
export type End = "trailer" | "towing";

/** What a pin is for, as far as the wiring of either vehicle follows from it. */
export type Carries =
  | "lamp" // worked by the driver, a lamp on the trailer
  | "tail" // the same over the relay of the tail lamps
  | "stop" // the same, and it lights the towing vehicle's own lamp
  | "turn" // the same, live only with the key on
  | "reversing" // likewise
  | "valve" // worked by the driver, a winding on the trailer
  | "permanent"
  | "ignition"
  | "electronics" // live with the key on, for the relay that lets the warning lamp out
  | "charge" // for a battery on the trailer
  | "ground"
  | "code" // bridged to a ground on the trailer, pulls in a relay of the towing vehicle
  | "wear" // a contact on the trailer, a lamp in the towing vehicle
  | "pressure" // a sender on the trailer, a lamp in the towing vehicle
  | "warning" // the trailer grounds a lamp of the towing vehicle
  | "data"
  | "nothing";

export interface PublishedPin {
  readonly mark: string;
  /** The function as published, remarks in brackets left out. */
  readonly words: string;
  /** The same as it is usually written short, without the direction. */
  readonly short: string;
  /** IEC 60757 letters as published; empty where none is. */
  readonly colour: string;
  readonly carries: Carries;
  /** Decided by hand from what the standard says of the pin and from the page of roles. */
  readonly fits: Readonly<Record<End, readonly RoleName[]>>;
  /** The ground pin that the trailer's load comes back to. */
  readonly back: string | null;
}

export interface Standard {
  /** Number and name of the standard that the pins are published in. */
  readonly name: string;
  readonly volts: 12 | 24;
  readonly pins: readonly PublishedPin[];
}

type Fits = PublishedPin["fits"];

/** `"input/output"` on the trailer's and on the towing vehicle's side. */
export const fits = (trailer: string, towing: string): Fits => ({
  trailer: trailer.split("/") as RoleName[],
  towing: towing.split("/") as RoleName[],
});

/** Where the trailer's box has a feed of its own, what comes through a contact only tells it. */
export const TOLD = fits("input", "output");
/** Where it has none, what comes through a contact may be what it lives on. */
export const TOLD_OR_FED = fits("switched-supply/input", "output");
export const FED = fits("supply", "output");
export const FED_BY_KEY = fits("switched-supply", "output");
/** The trailer's loads lie between two pins of the towing vehicle's end: both are outputs. */
export const GROUND = fits("ground", "output");
/** A ground beside a proper one could be a coding strap as well. */
export const GROUND_OF_SEVERAL = fits("ground/input", "output");
export const DATA = fits("signal", "signal");
export const UNUSED = fits("unused", "unused");

export const pin = (
  mark: string,
  words: string,
  short: string,
  colour: string,
  carries: Carries,
  roles: Fits,
  back: string | null = null,
): PublishedPin => ({ mark, words, short, colour, carries, fits: roles, back });
