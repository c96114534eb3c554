import { boxesOverlap, distance, growBox } from "../../../../base/index.ts";
import {
  type DoubtfulPlace,
  hitAt,
  isOnePlace,
  netGrid,
  netLookedAt,
  stretchAt,
  type TraceDesk,
  traceDeskOf,
  viewBox,
} from "../../../../session/index.ts";
import type { Board } from "../board.ts";
import type { Press } from "../gestures/gesture.ts";
import {
  drawGhost,
  drawHovered,
  drawLitNet,
  drawOpenEnd,
  drawPlace,
  drawStretch,
  markOf,
} from "./draw-nets.ts";
import { proposalsShown } from "./proposals-shown.ts";
import type { ScanLayer } from "./scan-layer.ts";

/** Half of what a fingertip needs, pixels of the view. */
const HALF_FINGER = 22;

/** Nets of the picture over it: lit up or proposed, with their doubtful places. */
export const NETS_LAYER: ScanLayer = {
  watch: (session, redraw) => traceDeskOf(session)?.subscribe(redraw) ?? (() => {}),
  draw: (ink, board) => {
    const desk = traceDeskOf(board.session);
    if (!desk) return;
    const { followed, hovered, isListOpen, shown, place, traced } = desk.get();
    const scene = board.scene();
    if (isListOpen && traced) {
      const view = viewBox(board.camera(), board.get().size);
      for (const { net, doubts } of proposalsShown(desk)) {
        if (!boxesOverlap(growBox(net.box, 20), view)) continue;
        if (net.id === shown) drawLitNet(ink, net, scene);
        else drawGhost(ink, net, doubts.length === 0);
      }
    }
    if (board.session.get().tool.name === "follow") {
      if (hovered && hovered !== followed?.net) drawHovered(ink, hovered);
      if (followed?.net) drawLitNet(ink, followed.net, scene);
    }
    const looked = netLookedAt(desk.get());
    const stretch = looked && isOnStretch(place) ? stretchAt(looked, place.at) : null;
    if (stretch) drawStretch(ink, stretch);
    for (const one of desk.places()) {
      const isOpen = place !== null && isOnePlace(place.at, one.at);
      if (one.stretch === "ends") drawOpenEnd(ink, one, isOpen);
      else drawPlace(ink, one, isOpen);
    }
  },
  tap: (board, press) => {
    const desk = traceDeskOf(board.session);
    return desk && (tapPlace(board, desk, press) ?? tapGhost(board, desk, press));
  },
};

const isOnStretch = (place: DoubtfulPlace | null): place is DoubtfulPlace =>
  place?.stretch === "ends" || place?.stretch === "here";

/** The mark of a doubtful place or the place itself. */
function tapPlace(board: Board, desk: TraceDesk, press: Press): (() => void) | null {
  const { zoom } = board.camera();
  let [best, nearest]: [DoubtfulPlace | null, number] = [null, HALF_FINGER / zoom];
  for (const place of desk.places()) {
    const onPlace = distance(place.at, press.sheet);
    // The ring about an end stands on it; every other mark beside its place.
    const away =
      place.stretch === "ends"
        ? onPlace
        : Math.min(distance(markOf(place.at, zoom), press.sheet), onPlace * 2);
    if (away <= nearest) [best, nearest] = [place, away];
  }
  const found = best;
  return found && (() => desk.ask(found));
}

/** A proposed net, where nothing is drawn that a tap would rather mean. */
function tapGhost(board: Board, desk: TraceDesk, press: Press): (() => void) | null {
  const { tool } = board.session.get();
  if (!desk.get().isListOpen || tool.name !== "select") return null;
  const scene = board.scene();
  const reach = board.reach(press.touch);
  if (scene && hitAt(scene, press.sheet, reach)) return null;
  const nets = proposalsShown(desk).map(({ net }) => net);
  const net = netGrid(nets).at(press.sheet, reach);
  return net && (() => desk.look(net.id));
}
