import type { Session } from "../../../../session/index.ts";
import type { Board } from "../board.ts";
import type { Ink } from "../drawing/ink.ts";
import type { Press } from "../gestures/gesture.ts";
import { NETS_LAYER } from "./nets-layer.ts";
import { PARTS_LAYER } from "./parts-layer.ts";
import type { ScanLayer } from "./scan-layer.ts";
import { WORDS_LAYER } from "./words-layer.ts";

/** From the lowest to the topmost: what is drawn last is tapped first. */
const SCAN_LAYERS: readonly ScanLayer[] = [PARTS_LAYER, WORDS_LAYER, NETS_LAYER];

const isShown = (session: Session): boolean => {
  const { scanDesk, operate } = session.get();
  return scanDesk && !operate.on;
};

export function drawScan(ink: Ink, board: Board): void {
  if (isShown(board.session)) for (const layer of SCAN_LAYERS) layer.draw(ink, board);
}

/** What a tap there does on what the scan desk shows; null where it shows nothing to be tapped. */
export function scanTap(board: Board, at: Press): (() => void) | null {
  if (!isShown(board.session)) return null;
  for (const layer of SCAN_LAYERS.toReversed()) {
    const act = layer.tap?.(board, at);
    if (act) return act;
  }
  return null;
}

/** Calls `redraw` whenever a layer has something else to draw. Returns the call that ends that. */
export function watchScan(session: Session, redraw: () => void): () => void {
  const ends = SCAN_LAYERS.map((layer) => layer.watch(session, redraw));
  let before = isShown(session);
  const end = session.subscribe(() => {
    if (before === isShown(session)) return;
    before = !before;
    redraw();
  });
  return () => {
    for (const one of [...ends, end]) one();
  };
}
