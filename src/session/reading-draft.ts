import { parseQuantity } from "../base/index.ts";
import {
  freeId,
  type Id,
  idsOf,
  type Job,
  type Probe,
  type Reading,
  type When,
} from "../job/index.ts";
import type { ReadingSetup } from "../readings/index.ts";
import type { ReadingDraft } from "./state.ts";

/** An empty pad: volts from a place yet to be tapped to chassis. */
export function newDraft(chosen: Probe | null = null): ReadingDraft {
  return {
    quantity: "volts",
    red: chosen,
    black: "chassis",
    asks: chosen ? null : "red",
    when: {},
    with: "meter",
    value: "",
    note: "",
  };
}

/** A pad set up for a reading to be taken, all but the value. */
export function draftFor(setup: ReadingSetup): ReadingDraft {
  return {
    quantity: setup.quantity,
    red: setup.red,
    black: setup.black,
    asks: null,
    when: setup.when,
    with: setup.with ?? "meter",
    value: "",
    note: "",
  };
}

/** What is being measured, once both probes are somewhere; null before. */
export function setupOf(draft: ReadingDraft): ReadingSetup | null {
  if (draft.red === null || draft.black === null) return null;
  return {
    quantity: draft.quantity,
    red: draft.red,
    black: draft.black,
    when: draft.when,
    ...(draft.with === "test-lamp" ? { with: draft.with } : {}),
  };
}

/** Why the draft cannot be kept yet, in a sentence; null when it can. */
export function lacking(draft: ReadingDraft): string | null {
  if (draft.red === null || draft.black === null) {
    // Only what is true now: a tap goes to the lead that is asked for, and to none when none is.
    return draft.asks === null
      ? `Tap the ${draft.red === null ? "red" : "black"} lead, then where it goes.`
      : `Tap where the ${draft.asks} lead goes.`;
  }
  if (draft.red === draft.black) return "Both leads are on the same place.";
  const value = parseQuantity(draft.value, draft.quantity);
  return value.ok ? null : (value.issues[0]?.message ?? "Type what the meter shows.");
}

/**
 * The reading that a complete draft stands for, with the first free id. `at` is the ISO 8601 time
 * it was taken. Null while something is lacking.
 */
export function readingOf(draft: ReadingDraft, job: Job, at: string): Reading | null {
  const setup = setupOf(draft);
  const value = parseQuantity(draft.value, draft.quantity);
  if (!setup || !value.ok || lacking(draft) !== null) return null;
  return {
    id: draft.mends ?? freeId(idsOf(job), "R"),
    ...setup,
    when: tidyWhen(setup.when),
    value: value.value,
    at,
    ...(draft.note.trim() === "" ? {} : { note: draft.note.trim() }),
  };
}

/** A stored reading back on the pad, its value too where it is to be mended. */
export function draftOf(reading: Reading, keepValue: boolean): ReadingDraft {
  return {
    ...draftFor(reading),
    ...(keepValue
      ? { value: String(reading.value), note: reading.note ?? "", mends: reading.id }
      : {}),
  };
}

/** A tapped place goes to the lead that was asked for; then the other one is asked for, if it has none. */
export function placeProbe(draft: ReadingDraft, probe: Probe): ReadingDraft {
  if (draft.asks === null) return draft;
  return askOn({ ...draft, [draft.asks]: probe });
}

/** The other way round; a lead that has no place now is asked for. */
export function swapLeads(draft: ReadingDraft): ReadingDraft {
  return askOn({ ...draft, red: draft.black, black: draft.red });
}

/** Asks for the lead that has no place yet, or for none. */
function askOn(draft: ReadingDraft): ReadingDraft {
  return { ...draft, asks: draft.red === null ? "red" : draft.black === null ? "black" : null };
}

/** Keeps a reading in a draft of the job: a new one at the end, a mended one in its old place. */
export function keepReading(draft: Job, machine: Id, reading: Reading): void {
  const readings = draft.machines.find((one) => one.id === machine)?.readings;
  if (!readings) throw new Error(`no such machine: ${machine}`);
  const place = readings.findIndex((one) => one.id === reading.id);
  if (place < 0) readings.push(reading);
  else readings[place] = { ...readings[place], ...reading };
}

/** Only what differs from rest is kept. */
export function tidyWhen(when: When): When {
  const tidy: When = { ...when };
  if (Object.keys(tidy.switches ?? {}).length === 0) delete tidy.switches;
  if ((tidy.unplugged ?? []).length === 0) delete tidy.unplugged;
  if ((tidy.removed ?? []).length === 0) delete tidy.removed;
  if (tidy.engine === "off") delete tidy.engine;
  return tidy;
}

/** Puts a switch of the diagram into a position; its position at rest is not stored. */
export function setSwitch(when: When, id: Id, position: string, rest: string): When {
  const switches: Readonly<Record<Id, string>> = when.switches ?? {};
  const { [id]: _, ...others } = switches;
  return { ...when, switches: position === rest ? others : { ...others, [id]: position } };
}

/** Unplugs a module or an inline plug, or plugs it in again. */
export function togglePlugged(when: When, id: Id): When {
  const unplugged = when.unplugged ?? [];
  return {
    ...when,
    unplugged: unplugged.includes(id) ? unplugged.filter((one) => one !== id) : [...unplugged, id],
  };
}

/** Takes a part out, or puts it back. */
export function toggleRemoved(when: When, id: Id): When {
  const removed = when.removed ?? [];
  return {
    ...when,
    removed: removed.includes(id) ? removed.filter((one) => one !== id) : [...removed, id],
  };
}

/** What the large keypad does to the text typed so far. */
export function pressKey(text: string, key: string): string {
  switch (key) {
    case "back":
      return text.slice(0, -1);
    case "clear":
      return "";
    case "OL":
      return "OL";
    case "−":
      return text.startsWith("-") ? text.slice(1) : `-${isOverload(text) ? "" : text}`;
    case ".":
      return /[.,km]/i.test(text) ? text : `${isOverload(text) || text === "" ? "0" : text}.`;
    case "k":
    case "m":
      return /\d$/.test(text) && !/[km]/i.test(text) ? `${text}${key}` : text;
    default:
      return isOverload(text) ? key : text + key;
  }
}

const isOverload = (text: string) => text.toUpperCase() === "OL";
