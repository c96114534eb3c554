import { formatQuantity } from "../base/index.ts";
import { capital } from "../roles/index.ts";
import type { Prediction, ReadingSetup } from "./prediction.ts";
import { wordsForProbe } from "./setup-words.ts";
import type { Shared } from "./shared.ts";

/** Share of system voltage that counts as full. */
export const FULL = 0.8;
/** Below this, volts count as none. */
export const DEAD_VOLTS = 0.5;

/** What the reading is about, beside its value. */
export interface Bearing {
  /** The cavity is fed through wires, fuses and contacts in some state. */
  readonly isFeed: boolean;
  /** What the switches of this reading change against rest, `S2 at pressed`; empty at rest. */
  readonly switched: string;
  /** Loads that the way leads through, a few of them by id. */
  readonly loads: readonly string[];
  /** Of ohms: wires, fuses and closed contacts alone lead from one lead to the other. */
  readonly isSolid: boolean;
}

/** What a reading would prove, in one sentence. */
export function provesOf(
  { job }: Shared,
  setup: ReadingSetup,
  { predicted, floating }: Prediction,
  { isFeed, switched, loads, isSolid }: Bearing,
): string {
  const load = loads.length === 0 ? "the load" : loads.join(" beside ");
  if (floating) {
    return switched === ""
      ? "Nothing holds this point at rest: a few ghost volts mean nothing, full volts mean a feed that is not drawn."
      : `With ${switched} nothing holds this point: full volts there come from a feed that is not drawn.`;
  }
  if (setup.with === "test-lamp") {
    return setup.red === "battery+"
      ? "Lit to full volts, the ground carries current and does not hang by a strand; dim or dark, it is bad on the way."
      : "Full volts with the lamp lit prove the feed under load: fuse, wire and every joint up to here; dim or dark, one of them is bad.";
  }
  const other = wordsForProbe(job, setup.black);
  if (setup.quantity === "ohms") {
    if (predicted === "OL")
      return `Nothing joins it to ${other} in this state: anything low is a wire that touches where it must not.`;
    if (isSolid)
      return `A solid way to ${other}: more than a few ohms is a bad joint or wire, OL a broken one.`;
    if (isFeed) return "What hangs on this feed, all in parallel: next to nothing is a short.";
    return `${capital(load)} with its wiring to ${other}: far lower is shorted, OL is open.`;
  }
  if (typeof predicted !== "number") return "Shows whether anything stands here.";
  if (Math.abs(predicted) >= FULL * job.systemVoltage) {
    if (!isFeed)
      return `Volts through ${loads.length === 0 ? "what lies between this point and the feed" : load} prove it whole and fed, with no current flowing; none means that it is open or not fed.`;
    return switched === ""
      ? "The feed is there with all at rest; only a loaded test shows whether it can carry current."
      : `The feed comes with ${switched}: no volts mean that a contact, a fuse or a wire before this point is open.`;
  }
  if (Math.abs(predicted) < DEAD_VOLTS) {
    return switched === ""
      ? "No volts at rest: any here come from where none are drawn."
      : `No volts with ${switched}: any here come from where none are drawn.`;
  }
  return `About ${formatQuantity(Math.round(predicted * 10) / 10, "volts")} shows that ${load} holds this point; full or no volts mean that one side of it is open or shorted.`;
}
