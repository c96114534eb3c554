import { type Id, type Job, ownerOf } from "../../job/index.ts";
import { analysisDeskOf, findingWithKey, focusOn, type Session } from "../../session/index.ts";

/** Chooses a thing and brings the sheet or the plug that it lies on to the front. */
export function goTo(session: Session, ref: string): void {
  const { job } = session.get();
  const finding = findingWithKey(analysisDeskOf(session).get().result, ref);
  const subjects = finding ? finding.subjects : [ref];
  // A finding is shown with the path that proves it: it may be about a cavity or a reading alone.
  const path = finding?.because ?? [];
  const owners = subjects.map(ownerOf);
  const plug = job.plugs.find((one) => owners.includes(one.id));
  const sheet = sheetOf(job, owners) ?? sheetOf(job, path);
  session.show({
    selection: [ref],
    dialog: null,
    ...(sheet ? { sheet } : {}),
    ...(plug ? { plug: plug.id } : {}),
  });
  // Once the board is there and has the size that it will have beside the details of the thing.
  if (sheet)
    requestAnimationFrame(() => requestAnimationFrame(() => focusOn([...subjects, ...path])));
}

/** The sheet that the first part or wire of these lies on. */
function sheetOf({ diagram }: Job, ids: readonly Id[]): Id | undefined {
  const part = diagram.parts.find((one) => ids.includes(one.id));
  if (part) return part.sheet;
  const wire = diagram.wires.find((one) => ids.includes(one.id));
  const end = wire && ownerOf(wire.from);
  return diagram.parts.find((one) => one.id === end)?.sheet;
}
