/** The single edits that a user makes most, for the benchmarks of checking again. */
import { applyEdit, EMPTY_HISTORY, type Job } from "../../src/job/index.ts";

export type EditKind = readonly [what: string, change: (draft: Job, n: number) => void];

/** Through the same door as the user's edits. */
export const edited = (before: Job, change: (draft: Job) => void): Job =>
  applyEdit({ job: before, history: EMPTY_HISTORY }, "Edit", change).job;

function takePart({ diagram }: Job, id: string): void {
  const isAt = (ref: string) => ref.startsWith(`${id}:`);
  diagram.parts = diagram.parts.filter((part) => part.id !== id);
  diagram.wires = diagram.wires.filter(({ from, to }) => !isAt(from) && !isAt(to));
}

/** Each at another place of the machine for every `n`; `job` is a large one as it was before any edit. */
export function editKinds(job: Job): readonly EditKind[] {
  // places in the list of parts, so that an edit looks at no part but its own
  const placesOf = (kind: string): readonly number[] =>
    job.diagram.parts.flatMap((part, place) => (part.kind === kind ? [place] : []));
  const modules = placesOf("module");
  const switches = placesOf("switch").slice(1);
  const lamps = placesOf("lamp");
  const relays = placesOf("relay");
  // a smaller job has fewer of them: it goes round
  const placeIn = (places: readonly number[], n: number) => places[n % places.length] ?? 0;
  const idOf = (places: readonly number[], n: number) =>
    job.diagram.parts[placeIn(places, n)]?.id ?? "";
  const wires = Math.floor(0.3 * job.diagram.wires.length);
  const plug = job.plugs.at(-1)?.id ?? "";
  return [
    [
      "a part moved",
      (draft, n) => {
        const part = draft.diagram.parts[100 + 7 * n];
        if (part) part.at = [n, n];
      },
    ],
    [
      "a printed word typed",
      (draft, n) => {
        const part = draft.diagram.parts[placeIn(modules, 3 * n)];
        if (part?.kind === "module" && part.pins[3]) part.pins[3].printed = `OUT ${n}`;
      },
    ],
    [
      "a wire's colour set",
      (draft, n) => {
        const wire = draft.diagram.wires[50 + 11 * n];
        if (wire) wire.colour = { base: "RD" };
      },
    ],
    [
      "a wire drawn between two outputs",
      (draft, n) => {
        const module = idOf(modules, 100 + n);
        draft.diagram.wires.push({ id: `N${n}`, from: `${module}:5`, to: `${module}:6` });
      },
    ],
    [
      "a wire drawn to ground",
      (draft, n) => {
        const module = idOf(modules, 200 + n);
        draft.diagram.wires.push({ id: `NG${n}`, from: `${module}:4`, to: "E1:1" });
      },
    ],
    [
      "a wire taken away",
      (draft, n) => {
        draft.diagram.wires.splice(wires + 40 * n, 1);
      },
    ],
    [
      "six wires taken away at once",
      (draft, n) => {
        draft.diagram.wires.splice(wires + 40 * n, 6);
      },
    ],
    ["a lamp taken away with its wires", (draft, n) => takePart(draft, idOf(lamps, 100 + 3 * n))],
    ["a relay taken away with its wires", (draft, n) => takePart(draft, idOf(relays, 100 + 3 * n))],
    [
      "a module taken away with its wires",
      (draft, n) => takePart(draft, idOf(modules, 150 + 3 * n)),
    ],
    [
      "a lamp drawn with its wires",
      (draft, n) => {
        const at = { sheet: "sheet1", at: [n, n] as [number, number], turn: 0 as const, unit: 3 };
        draft.diagram.parts.push({ id: `PN${n}`, kind: "lamp", watts: 21, ...at });
        draft.diagram.wires.push(
          { id: `NP${n}`, from: `${idOf(modules, 400 + n)}:5`, to: `PN${n}:1` },
          { id: `NQ${n}`, from: `PN${n}:2`, to: "E1:1" },
        );
      },
    ],
    [
      "a pin tied to a cavity",
      (draft, n) => {
        draft.links.push({ pin: `${idOf(modules, 300 + n)}:1`, cavity: `${plug}:${n + 1}` });
      },
    ],
    [
      "a switch's rest changed",
      (draft, n) => {
        const part = draft.diagram.parts[placeIn(switches, 5 * n)];
        if (part?.kind === "switch") part.rest = "on";
      },
    ],
    [
      "a reading taken",
      (draft, n) => {
        draft.machines[0]?.readings.push({
          id: `NR${n}`,
          quantity: "volts",
          red: `${idOf(modules, n)}:1`,
          black: "chassis",
          value: 25,
          when: {},
        });
      },
    ],
  ];
}
