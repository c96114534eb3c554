import { useEffect, useState } from "react";
import type { Bow, ProposedCorners, Squaring } from "../../../scan/index.ts";
import type { SquarePort } from "../../workers/open-square.ts";
import { proposedCorners, type Size } from "./square-work.ts";

/** Milliseconds that corners must rest before the lens is looked for along their sides. */
const SETTLED = 500;
/** Below this a proposal is worth a second look. */
const SURE = 0.8;

/** What is found of corners and of the lens, by itself and after each drag. */
export function useCorners(
  port: SquarePort,
  size: Size,
  squaring: Squaring,
  onSquaring: (change: (squaring: Squaring) => Squaring) => void,
) {
  const [found, setFound] = useState<ProposedCorners | null>(null);
  const [state, setState] = useState<"not-asked" | "looking" | "looked">("not-asked");
  const [bow, setBow] = useState<Bow | null>(null);
  const [problem, setProblem] = useState<string | null>(null);

  const find = async () => {
    setState("looking");
    setProblem(null);
    try {
      const proposed = await port.propose();
      setFound(proposed);
      setBow(proposed?.bow ?? null);
      if (proposed) onSquaring((now) => proposedCorners(now, proposed, size));
    } catch (error) {
      setProblem(error instanceof Error ? error.message : String(error));
    }
    setState("looked");
  };

  const { corners } = squaring;
  /** The corners that the desk was opened with: of those nobody knows here who set them. */
  const [kept] = useState(corners);
  const isFound = found !== null && JSON.stringify(corners) === JSON.stringify(found.corners);
  useEffect(() => {
    if (!corners || isFound) return;
    let isStale = false;
    const timer = setTimeout(() => {
      port
        .bowNear(corners)
        .then((seen) => !isStale && setBow(seen))
        // It is only an offer: without it the page is squared up all the same.
        .catch(() => {});
    }, SETTLED);
    return () => {
      isStale = true;
      clearTimeout(timer);
    };
  }, [port, corners, isFound]);

  return {
    find,
    isLooking: state === "looking",
    bow,
    says: problem ?? saysOf(),
  };

  function saysOf(): string {
    if (state === "looking") return "Looking for the page…";
    if (isFound && found.cutOff.length > 0) {
      return `The page goes on beyond the picture (${found.cutOff.join(", ")}), so its edge can't be found there. Better take the photo anew with all of the page on it; or drag the corners to a frame that is drawn on it.`;
    }
    if (isFound) {
      const what = found.of === "page" ? "The page’s edge was found" : "A drawn frame was found";
      return `${what}. ${found.confidence < SURE ? "Not quite surely: look at each corner." : "Drag a corner that is off."}`;
    }
    if (corners && corners === kept) return "As they were used. Drag a corner that is off.";
    if (corners) return "Set by hand.";
    if (state === "looked" && !found) {
      return "No page’s edge and no frame is plain to see: drag the four corners yourself. A page that the picture’s edge cuts off is better photographed anew.";
    }
    return "The whole picture is taken.";
  }
}
