import { applyPatches, type Patch, produceWithPatches } from "immer";
import { type Id, type Job, ownerOf } from "../../job/index.ts";
import { plain } from "../diagram/draft.ts";
import { changesOf, drawnJob } from "./drawn-job.ts";
import type { Recording } from "./recording.ts";
import { tidyChanges } from "./tidy-changes.ts";
import { writeBack } from "./write-back.ts";

const isDrawing = ({ path: [first, second] }: Patch): boolean =>
  first === "diagram" && (second === "parts" || second === "wires");

/**
 * Makes `change` to the job as the boards show it for one machine, and takes what it did to where
 * it belongs. Everything else of the job is changed as it stands.
 *
 * @throws {DrawingRefusal} for what can't be recorded as a change of one machine
 */
export function editDrawn(
  draft: Job,
  machine: Id,
  recording: Recording | null,
  change: (draft: Job) => void,
): void {
  const before = plain(draft);
  if (recording === null && changesOf(before, machine).length === 0) change(draft);
  else {
    const shown = drawnJob(before, machine);
    const [next, patches] = produceWithPatches(shown, (shownDraft: Job) => change(shownDraft));
    applyPatches(
      draft,
      patches.filter((patch) => !isDrawing(patch)),
    );
    // A sheet goes with all that is on it, for every machine.
    const sheetGone = next.diagram.sheets.length < shown.diagram.sheets.length;
    const into = sheetGone ? null : recording;
    writeBack(draft, machine, into, shown.diagram, next.diagram, patches);
    if (into) {
      keepLinks(draft, before, next);
      keepSaid(draft, before, next);
    }
  }
  tidyChanges(draft, before);
}

/** A part that one machine is without keeps its cavities: on the others it is still there. */
function keepLinks(draft: Job, before: Job, next: Job): void {
  if (next.links === before.links) return;
  const drawn = new Set(next.diagram.parts.map(({ id }) => id));
  const kept = new Set(next.links);
  const lost = before.links.filter((one) => !kept.has(one) && !drawn.has(ownerOf(one.pin)));
  if (lost.length === 0) return;
  const fresh = next.links.filter((one) => !before.links.includes(one));
  draft.links = [...before.links.filter((one) => kept.has(one) || lost.includes(one)), ...fresh];
}

/** What was said of such a part counts on the others, too. */
function keepSaid(draft: Job, before: Job, next: Job): void {
  const drawn = new Set(next.diagram.parts.map(({ id }) => id));
  const was = new Set(before.diagram.parts.map(({ id }) => id));
  const isLost = (ref: string) => was.has(ownerOf(ref)) && !drawn.has(ownerOf(ref));
  const lost = <T extends object>(
    all: T[] | undefined,
    left: T[] | undefined,
    refs: (one: T) => readonly string[],
  ) => (all ?? []).filter((one) => !left?.includes(one) && refs(one).some(isLost));
  const adopted = lost(before.adopted, next.adopted, ({ pin }) => [pin]);
  const setAside = lost(before.setAside, next.setAside, ({ subjects }) => subjects);
  if (adopted.length > 0) draft.adopted = [...(next.adopted ?? []), ...adopted];
  if (setAside.length > 0) draft.setAside = [...(next.setAside ?? []), ...setAside];
}
