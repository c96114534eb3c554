import { distance, type Point } from "../../../base/index.ts";
import { ownerOf } from "../../../job/index.ts";
import {
  drawnOf,
  type ViewRequest,
  type ViewSize,
  viewBox,
  zoomAbout,
} from "../../../session/index.ts";
import { type Board, outOfSight } from "./board.ts";
import { placePart } from "./gestures/place-gesture.ts";

/** Does what commands and other screens ask of the view. */
export function answer(board: Board, request: ViewRequest): void {
  const { width, height } = board.get().size;
  switch (request.ask) {
    case "fit":
      board.fit();
      break;
    case "zoom":
      board.look(zoomAbout(board.camera(), [width / 2, height / 2], request.by));
      break;
    case "focus":
      showSheetOf(board, request.refs);
      board.focus(request.refs);
      break;
    case "edit":
      showSheetOf(board, [request.ref]);
      if (outOfSight(board, [request.ref])) board.focus([request.ref]);
      board.show({ editing: request.ref });
      break;
    case "palette":
      board.show({ paletteOpen: true });
      break;
    case "menu":
      board.show({ menu: [width / 2, height / 3], menuSheet: null });
      break;
    case "place":
      placePart(board, request.kind, freeSpot(board, board.toSheet([width / 2, height / 2])), 0);
      break;
  }
}

/** Brings what was chosen elsewhere into sight, with the pin of a chosen cavity standing for it. */
export function reveal(board: Board, selection: readonly string[]): void {
  const [chief] = selection;
  if (chief === undefined) return;
  const { job } = board.session.get();
  const ref = job.links.find((link) => link.cavity === chief)?.pin ?? chief;
  showSheetOf(board, [ref]);
  if (outOfSight(board, [ref])) board.centre([ref]);
}

/** The place itself, or the nearest one along the slope below it where no part lies yet. */
function freeSpot(board: Board, [x, y]: Point): Point {
  const step = 4 * board.unit();
  const taken = (at: Point) =>
    board.scene()?.parts.some(({ part }) => distance(part.at, at) < step) ?? false;
  let at: Point = [Math.round(x), Math.round(y)];
  while (taken(at)) at = [at[0] + step, at[1] + step];
  return at;
}

/** A view that has lost or won this share of itself is another view, not a nudge of the layout. */
const ANOTHER_VIEW = 0.2;

/** Whether all there is on the sheet is in sight. */
export function seesAll(board: Board): boolean {
  const { job, sheet } = board.session.get();
  const image = job.diagram.sheets.find((one) => one.id === sheet)?.image;
  const box = image
    ? { left: 0, top: 0, right: image.width, bottom: image.height }
    : board.scene()?.bounds;
  if (!box) return false;
  const view = viewBox(board.camera(), board.get().size);
  return (
    box.left >= view.left &&
    box.right <= view.right &&
    box.top >= view.top &&
    box.bottom <= view.bottom
  );
}

/** Less than this share of its fitted size, the picture was made small on purpose. */
const STILL_FITTED = 0.8;

/** Whether the sheet's picture is shown whole, about as large as it goes. */
export function showsWholePicture(board: Board): boolean {
  const { job, sheet } = board.session.get();
  const image = job.diagram.sheets.find((one) => one.id === sheet)?.image;
  if (!image || !seesAll(board)) return false;
  const { width, height } = board.get().size;
  const fitted = Math.min(width / image.width, height / image.height);
  return board.camera().zoom >= STILL_FITTED * fitted;
}

/** Takes on a new size; when much has changed the middle stays the middle, and what is chosen in sight. */
export function resize(board: Board, size: ViewSize): void {
  const { size: before, cameras } = board.get();
  const { sheet, selection } = board.session.get();
  const camera = cameras[sheet ?? ""];
  board.show({ size });
  const changed = Math.max(
    Math.abs(size.width - before.width) / before.width,
    Math.abs(size.height - before.height) / before.height,
  );
  if (!camera || !(changed > ANOTHER_VIEW) || size.width === 0) return;
  board.look({
    ...camera,
    left: camera.left + (before.width - size.width) / 2 / camera.zoom,
    top: camera.top + (before.height - size.height) / 2 / camera.zoom,
  });
  reveal(board, selection);
}

/** Goes to the sheet that the first of the named things lies on. */
function showSheetOf(board: Board, refs: readonly string[]): void {
  const { sheet } = board.session.get();
  const job = drawnOf(board.session.get());
  const owners = refs.map(ownerOf);
  const wire = job.diagram.wires.find((one) => owners.includes(one.id));
  const ends = wire ? [ownerOf(wire.from)] : owners;
  const home = job.diagram.parts.find((part) => ends.includes(part.id))?.sheet;
  if (home !== undefined && home !== sheet) board.session.show({ sheet: home });
}

/** The pin of a module under a place of the sheet: only those can be tied to cavities. */
export function modulePinNear(board: Board, at: readonly [number, number]): string | null {
  const scene = board.scene();
  if (!scene) return null;
  let best: string | null = null;
  let nearest = board.reach(true);
  for (const shape of scene.parts) {
    if (shape.part.kind !== "module") continue;
    for (const spot of shape.pins) {
      const away = Math.hypot(spot.at[0] - at[0], spot.at[1] - at[1]);
      if (away > nearest) continue;
      nearest = away;
      best = spot.ref;
    }
  }
  return best;
}
