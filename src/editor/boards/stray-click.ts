/** The click made up for a touch comes within this time, ms; later ones are the user's own. */
const PATIENCE = 1000;

/** What browsers make up after a touch, and send to whatever is under the finger by then. */
const MADE_UP = ["mousedown", "mouseup", "click"] as const;

/**
 * A board acts when the finger lifts, and another screen may take its place at once. The click that
 * the browser makes up for that touch would then press what is new under the finger, such as a key
 * of the reading pad: it is kept from everything but the board itself. To be called with the
 * `pointerup`, before it is acted upon.
 */
export function keepClickFromOthers({
  pointerType,
  currentTarget,
}: {
  readonly pointerType: string;
  readonly currentTarget: EventTarget | null;
}): void {
  if (pointerType === "mouse" || !(currentTarget instanceof Element)) return;
  const stop = (event: MouseEvent) => {
    // Keys and screen readers send no count of clicks: theirs are meant.
    const isMeant = event.type === "click" && event.detail === 0;
    const isOnBoard = event.target instanceof Node && currentTarget.contains(event.target);
    if (isMeant || isOnBoard) return;
    event.preventDefault();
    event.stopImmediatePropagation();
  };
  const end = () => {
    clearTimeout(timer);
    for (const name of MADE_UP) window.removeEventListener(name, stop, true);
    window.removeEventListener("pointerdown", end, true);
  };
  const timer = setTimeout(end, PATIENCE);
  for (const name of MADE_UP) window.addEventListener(name, stop, true);
  // The next touch is another one, and so is its click.
  window.addEventListener("pointerdown", end, true);
}
