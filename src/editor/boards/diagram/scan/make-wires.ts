import { listAnd } from "../../../../roles/index.ts";
import { type NetsDrawn, type Session, traceDeskOf } from "../../../../session/index.ts";

const counted = (count: number, one: string, many: string) =>
  `${count} ${count === 1 ? one : many}`;

/** What was drawn, in a sentence. */
export function drawnWords({ wires, splices, ends }: NetsDrawn): string {
  if (wires === 0) return "Nothing to draw: what this line joins is joined already.";
  const drawn = [
    counted(wires, "wire", "wires"),
    ...(splices > 0 ? [counted(splices, "splice", "splices")] : []),
    ...(ends > 0 ? [counted(ends, "open end", "open ends")] : []),
  ];
  return `Drew ${listAnd(drawn)} along the picture.`;
}

/** Turns the net that is followed into wires, as one edit. Returns whether there was one. */
export function makeWires(session: Session): boolean {
  const desk = traceDeskOf(session);
  const net = desk?.get().followed?.net;
  if (!desk || !net) return false;
  const say = (text: string) => session.show({ notice: { tone: "info", text } });
  if (!desk.holds()) {
    say("One moment: the lines are being followed anew.");
    return true;
  }
  const drawn = desk.draw([net], "Make a wire of a followed line");
  if (!drawn) return true;
  desk.forget();
  say(drawnWords(drawn));
  return true;
}
