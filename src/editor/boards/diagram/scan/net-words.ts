import { listAnd } from "../../../../roles/index.ts";
import { freeEndsOf, type NetDoubt, type WholeNet } from "../../../../session/index.ts";

/** What a net joins, in a sentence. */
export function netWords(net: WholeNet): string {
  const free = freeEndsOf(net);
  const goesOn =
    free === 0 ? "" : `; ${free === 1 ? "one end" : `${free} ends`} where nothing is placed`;
  const pins = [...net.terminals].sort((a, b) => a.localeCompare(b, "en", { numeric: true }));
  if (pins.length === 0) return `No placed pin on this line${goesOn}.`;
  if (pins.length === 1) return `Comes to ${pins[0]} only${goesOn}.`;
  return `Joins ${listAnd(pins)}${goesOn}.`;
}

/** Why a net is not taken for sure, in a sentence. */
export function doubtWords(doubt: NetDoubt): string {
  switch (doubt.why) {
    case "asked": {
      const { length } = doubt.questions;
      return length === 1 ? "One doubtful place on it." : `${length} doubtful places on it.`;
    }
    case "shorted":
      return `It would join both ends of ${doubt.part}: see whether the part covers its whole symbol.`;
    case "joins-drawn":
      return "It would join circuits that are drawn apart.";
    case "goes-on":
      return "Where it ends, place the part that is missing, or leave out what is no line.";
    case "one-pin":
      return "It goes on to where nothing is placed: its far end stays untraced.";
  }
}
