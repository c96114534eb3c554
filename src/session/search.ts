import { keptOf } from "../base/index.ts";
import type { CheckResult } from "../check/index.ts";
import { pinsOf } from "../circuit/index.ts";
import {
  type Colour,
  cavityRef,
  type Id,
  type Job,
  type Part,
  pinRef,
  type Reading,
  type Wire,
} from "../job/index.ts";
import { type ColourCode, IEC_60757 } from "../standards/index.ts";
import { drawnJob } from "./changes/drawn-job.ts";
import { findingKey } from "./counterparts.ts";

export type FoundKind = "part" | "pin" | "wire" | "cavity" | "reading" | "finding";

export interface Found {
  /** What to put into the selection. */
  readonly ref: string;
  readonly kind: FoundKind;
  /** The name by which the user knows it. */
  readonly title: string;
  /** What else tells it apart, possibly empty. */
  readonly detail: string;
}

interface Entry extends Found {
  /** Lower case. */
  readonly names: readonly string[];
  readonly words: readonly string[];
}

const KIND_ORDER: readonly FoundKind[] = ["part", "pin", "cavity", "wire", "reading", "finding"];

/** `RDBU`, `RD/BU`, `red`, `blue` and `red blue` all find a red wire with a blue stripe. */
function colourWords(colour: Colour | undefined): readonly string[] {
  if (!colour) return [];
  const codes = [colour.base, ...(colour.tracer ? [colour.tracer] : [])] as ColourCode[];
  const names = codes.map((code) => IEC_60757[code].name);
  return [codes.join(""), codes.join("/"), ...codes, ...names, names.join("/")];
}

export function colourText(colour: Colour | undefined): string {
  if (!colour) return "";
  return colourWords(colour)[0] ?? "";
}

const entries = new WeakMap<CheckResult, readonly Entry[]>();

/**
 * Everything in the job that `query` names: ids, printed words, labels, wire numbers, values and
 * colours by code or name. Every word of the query must be found. Best first: whole names, then
 * beginnings of names, then beginnings of words, then anywhere.
 */
export function search(
  job: Job,
  analysis: CheckResult,
  query: string,
  limit = 50,
): readonly Found[] {
  const asked = query.toLowerCase().split(/\s+/).filter(Boolean);
  if (asked.length === 0) return [];
  let list = entries.get(analysis);
  if (!list) {
    list = entriesOf(job, analysis);
    entries.set(analysis, list);
  }
  return list
    .map((entry) => ({ entry, rank: rankOf(entry, asked, query.trim().toLowerCase()) }))
    .filter(({ rank }) => rank < Number.POSITIVE_INFINITY)
    .sort((a, b) => a.rank - b.rank || order(a.entry) - order(b.entry))
    .slice(0, limit)
    .map(({ entry: { ref, kind, title, detail } }) => ({ ref, kind, title, detail }));
}

const order = (entry: Entry) => KIND_ORDER.indexOf(entry.kind);

function rankOf(entry: Entry, asked: readonly string[], whole: string): number {
  if (entry.names.includes(whole)) return 0;
  let worst = 0;
  for (const word of asked) {
    const rank = rankOfWord(entry, word);
    if (rank === Number.POSITIVE_INFINITY) return rank;
    worst = Math.max(worst, rank);
  }
  return worst;
}

function rankOfWord({ names, words }: Entry, asked: string): number {
  if (names.includes(asked)) return 1;
  if (words.includes(asked)) return 2;
  if (names.some((name) => name.startsWith(asked))) return 3;
  if (words.some((word) => word.startsWith(asked))) return 4;
  // One or two letters inside a word find nearly everything.
  const inside = asked.length > 2 && [...names, ...words].some((word) => word.includes(asked));
  return inside ? 5 : Number.POSITIVE_INFINITY;
}

function entry(
  hit: Found,
  names: readonly (string | undefined)[],
  texts: readonly (string | undefined)[],
): Entry {
  const lower = (list: readonly (string | undefined)[]) =>
    list
      .filter((text) => text !== undefined && text !== "")
      .map((text) => text?.toLowerCase() ?? "");
  const phrases = lower(texts);
  const words = phrases.flatMap((text) => text.split(/[^\p{L}\p{N}+.\-/]+/u));
  return { ...hit, names: lower(names), words: [...phrases, ...words].filter(Boolean) };
}

function entriesOf(job: Job, analysis: CheckResult): readonly Entry[] {
  const machine = job.machines.find((one) => one.id === analysis.machine);
  const { parts, wires } = drawnJob(job, analysis.machine).diagram;
  const seen = new Map(machine?.wires.toReversed().map((wire) => [wire.cavity, wire]));
  return [
    ...parts.flatMap(partEntries),
    ...wires.map(wireEntry),
    ...job.plugs.flatMap((plug) =>
      plug.cavities.map((cavity) => {
        const ref = cavityRef(plug.id, cavity.mark);
        const wire = seen.get(ref);
        return entry(
          {
            ref,
            kind: "cavity",
            title: ref,
            detail: [plug.name, colourText(wire?.colour), wire?.number].filter(Boolean).join(" · "),
          },
          [ref, cavity.mark, `cavity ${cavity.mark}`, wire?.number],
          ["cavity", plug.name, plug.id, ...colourWords(wire?.colour), wire?.note],
        );
      }),
    ),
    ...(machine?.readings ?? []).map(readingEntry),
    ...analysis.findings.map((finding) =>
      entry(
        {
          ref: findingKey(finding),
          kind: "finding",
          title: finding.message,
          detail: finding.subjects.join(", "),
        },
        [finding.rule],
        [finding.message, ...finding.subjects],
      ),
    ),
  ];
}

/** Things of the diagram made ready in one go: a millisecond or two. */
const AT_ONCE = 400;

/**
 * Makes ready what a search will ask for, some of it at each step, so that the first letter typed
 * need not wait for all of a large job.
 */
export function* readySearch(job: Job, machine: Id): Generator<void> {
  const { parts, wires } = drawnJob(job, machine).diagram;
  for (let from = 0; from < Math.max(parts.length, wires.length); from += AT_ONCE) {
    parts.slice(from, from + AT_ONCE).forEach(partEntries);
    wires.slice(from, from + AT_ONCE).forEach(wireEntry);
    yield;
  }
}

const wireEntry = keptOf(
  (wire: Wire): Entry =>
    entry(
      {
        ref: wire.id,
        kind: "wire",
        title: wire.number ? `${wire.id} · ${wire.number}` : wire.id,
        detail: [colourText(wire.colour), `${wire.from} to ${wire.to}`].filter(Boolean).join(" · "),
      },
      [wire.id, wire.number],
      [...colourWords(wire.colour), wire.from, wire.to],
    ),
);

const partEntries = keptOf((part: Part): readonly Entry[] => {
  const printed = new Map(
    part.kind === "module" ? part.pins.map((pin) => [pin.id, pin] as const) : [],
  );
  const whole = entry(
    { ref: part.id, kind: "part", title: part.id, detail: part.label ?? part.kind },
    [part.id, part.label],
    [part.label, part.place, part.kind],
  );
  const pins = pinsOf(part).map(({ id }) => {
    const own = printed.get(id);
    const ref = pinRef(part.id, id);
    return entry(
      { ref, kind: "pin", title: ref, detail: own?.printed ?? part.label ?? part.kind },
      [ref, part.kind === "module" ? `pin ${id}` : undefined, own?.printed],
      ["pin", part.id, own?.printed, own?.label, part.kind === "module" ? id : undefined],
    );
  });
  return [whole, ...pins];
});

const UNITS = { volts: "V", drop: "V", ohms: "Ω", amps: "A" } as const;

function readingEntry(reading: Reading): Entry {
  const value = reading.value === "OL" ? "OL" : `${reading.value} ${UNITS[reading.quantity]}`;
  return entry(
    {
      ref: reading.id,
      kind: "reading",
      title: `${value} at ${reading.red}`,
      detail: `red ${reading.red}, black ${reading.black}`,
    },
    [reading.id, String(reading.value)],
    [value, reading.red, reading.black, reading.note, reading.quantity],
  );
}
