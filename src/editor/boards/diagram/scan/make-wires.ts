import { type Session, traceDeskOf } from "../../../../session/index.ts";

const counted = (count: number, one: string, many: string) =>
  `${count} ${count === 1 ? one : many}`;

/** What was drawn, in a sentence. */
export function drawnWords(wires: number, parts: number): string {
  if (wires === 0) return "Nothing to draw: what this line joins is joined already.";
  const with_ = parts === 0 ? "" : ` and ${counted(parts, "splice or end", "splices and ends")}`;
  return `Drew ${counted(wires, "wire", "wires")}${with_} along the picture.`;
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
  say(drawnWords(drawn.wires, drawn.parts));
  return true;
}
