import { type Session, traceDeskOf } from "../../../../session/index.ts";

/** Escape: from the close look to the followed net, and from that to the tool. Returns whether there was one. */
export function backOutOfScan(session: Session): boolean {
  const desk = traceDeskOf(session);
  const { tool, scanDesk } = session.get();
  if (!desk || !scanDesk) return false;
  const { place, followed, shown } = desk.get();
  if (place) desk.ask(null);
  else if (tool.name === "follow" && followed) desk.forget();
  else if (shown !== null) desk.look(null);
  else return false;
  return true;
}
