import { ownerOf } from "../../job/index.ts";
import { analysisOf, findingWithKey, focusOn, type Session } from "../../session/index.ts";

/** Chooses a thing and brings the sheet or the plug that it lies on to the front. */
export function goTo(session: Session, ref: string): void {
  const { job, machine } = session.get();
  const finding = findingWithKey(analysisOf(job, machine), ref);
  const subjects = finding ? finding.subjects : [ref];
  const owners = subjects.map(ownerOf);
  const part = job.diagram.parts.find((one) => owners.includes(one.id));
  const wire = job.diagram.wires.find((one) => owners.includes(one.id));
  const onWire = wire && job.diagram.parts.find((one) => one.id === ownerOf(wire.from));
  const plug = job.plugs.find((one) => owners.includes(one.id));
  const sheet = (part ?? onWire)?.sheet;
  session.show({
    selection: [ref],
    dialog: null,
    ...(sheet ? { sheet } : {}),
    ...(plug ? { plug: plug.id } : {}),
  });
  // Once the board is there and has the size that it will have beside the details of the thing.
  if (sheet) requestAnimationFrame(() => requestAnimationFrame(() => focusOn(subjects)));
}
