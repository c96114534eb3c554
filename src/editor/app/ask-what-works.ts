import type { Id } from "../../job/index.ts";
import type { Session } from "../../session/index.ts";
import { goTo } from "./go-to.ts";

/** Marks the field of a switch that says what works it. */
export const WORKED_BY = { "data-worked-by": "" };

const listeners = new Set<() => void>();

/** Tells when the details of a switch are asked for, so that what lies over them makes way. Returns how to stop it. */
export function onAskedWhatWorks(listener: () => void): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}

/** Frames in which the station, the board and the details of the switch come up. */
const FRAMES = 12;

/** Goes to the details of a switch, to the field that says what works it. */
export function askWhatWorks(session: Session, id: Id): void {
  session.show({ station: "diagram" });
  for (const tell of listeners) tell();
  goTo(session, id);
  focusSoon(FRAMES);
}

function focusSoon(frames: number): void {
  requestAnimationFrame(() => {
    const field = document.querySelector<HTMLElement>("[data-worked-by] select");
    if (!field) {
      if (frames > 0) focusSoon(frames - 1);
      return;
    }
    field.focus({ preventScroll: true });
    field.scrollIntoView({ block: "center" });
  });
}
