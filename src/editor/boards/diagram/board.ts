import { type Box, growBox, type Point } from "../../../base/index.ts";
import type { Id, Job, PartKindName } from "../../../job/index.ts";
import {
  boundsOfRefs,
  type Camera,
  createStore,
  type DiagramHit,
  drawnOf,
  fitBox,
  fromView,
  previewOf,
  type Scene,
  type Session,
  type Snap,
  type Store,
  sceneOf,
  toView,
  unitFor,
  type ViewSize,
  viewBox,
} from "../../../session/index.ts";

/** A wire that has been begun and not yet ended. */
export interface WireInHand {
  readonly start: Snap;
  /** Corners that are fixed so far, right angles already worked in. */
  readonly corners: readonly Point[];
  /** The corners as they were before each click, to step back to. */
  readonly steps: readonly (readonly Point[])[];
  /** Where the pointer would take it. */
  readonly target: Snap;
}

/** What the board shows beyond the session's state: never saved, never undone. */
export interface BoardState {
  readonly size: ViewSize;
  /** By sheet; a sheet without one has not been looked at yet. */
  readonly cameras: Readonly<Record<Id, Camera>>;
  /** The document as a drag under way would leave it. */
  readonly preview: Job | null;
  readonly wire: WireInHand | null;
  /** A wire whose end is being taken elsewhere. */
  readonly rewire: { readonly points: readonly Point[]; readonly onto: Snap["onto"] } | null;
  /** A box being drawn: to choose what is in it, or to be a module. */
  readonly band: Box | null;
  readonly hover: DiagramHit | null;
  /** The part about to be placed, following the pointer. */
  readonly ghost: {
    readonly kind: PartKindName;
    readonly at: Point;
    readonly turn: number;
  } | null;
  /** The thing whose words are being edited in place. */
  readonly editing: string | null;
  /** Where the short menu is open, pixels of the view. */
  readonly menu: Point | null;
  /** What of the sheet the menu was opened on; null from the keyboard. */
  readonly menuSheet: Point | null;
  readonly paletteOpen: boolean;
  /** Wire colours drawn true, or ink only. */
  readonly colours: boolean;
  readonly spaceHeld: boolean;
}

/** The diagram board without its elements: what pointers, keys and drawing all work on. */
export interface Board extends Store<BoardState> {
  readonly session: Session;
  /** Where the pointer last hovered, pixels of the sheet. */
  pointer: Point | null;
  /** Breaks off a drag under way. Returns whether there was one. */
  giveUp: () => boolean;
  readonly show: (change: Partial<BoardState>) => void;
  /** The sheet as drawn now, preview included; null when there is no sheet. */
  readonly scene: () => Scene | null;
  readonly camera: () => Camera;
  readonly look: (camera: Camera) => void;
  readonly toSheet: (view: Point) => Point;
  readonly toView: (sheet: Point) => Point;
  /** Pixels of the sheet that a fingertip or a mouse pointer reaches. */
  readonly reach: (touch: boolean) => number;
  /** Pixels of the sheet per symbol unit, for what is about to be drawn. */
  readonly unit: () => number;
  readonly fit: () => void;
  readonly focus: (refs: readonly string[]) => void;
  /** Brings the named things to the middle without another zoom. */
  readonly centre: (refs: readonly string[]) => void;
  /** Shows what `change` would do without doing it. */
  readonly preview: (change: (draft: Job) => void) => void;
  /** Does it, as one edit. */
  readonly commit: (label: string, change: (draft: Job) => void) => void;
}

const REACH = { mouse: 9, touch: 20 };
const EMPTY_VIEW: Camera = { left: -40, top: -40, zoom: 1 };
/** Nothing is shown larger than this when it is fitted, so that a lone fuse does not fill the board. */
const MOST_FITTED_ZOOM = 3;

const EMPTY: BoardState = {
  size: { width: 0, height: 0 },
  cameras: {},
  preview: null,
  wire: null,
  rewire: null,
  band: null,
  hover: null,
  ghost: null,
  editing: null,
  menu: null,
  menuSheet: null,
  paletteOpen: false,
  colours: true,
  spaceHeld: false,
};

export function createBoard(session: Session): Board {
  const store = createStore<BoardState>(EMPTY);
  const show = (change: Partial<BoardState>) => store.set((state) => ({ ...state, ...change }));
  const sheetId = () => session.get().sheet;
  const jobShown = () => store.get().preview ?? drawnOf(session.get());
  const scene = () => {
    const sheet = sheetId();
    return sheet === null ? null : sceneOf(jobShown().diagram, sheet);
  };
  const camera = () => store.get().cameras[sheetId() ?? ""] ?? EMPTY_VIEW;
  const look = (next: Camera) => {
    const sheet = sheetId();
    if (sheet !== null) show({ cameras: { ...store.get().cameras, [sheet]: next } });
  };
  const fit = () => {
    const { size } = store.get();
    const image = session.get().job.diagram.sheets.find((one) => one.id === sheetId())?.image;
    const drawn = scene()?.bounds;
    const box = image ? { left: 0, top: 0, right: image.width, bottom: image.height } : drawn;
    if (size.width === 0) return;
    if (box) look(fitBox(box, size, image ? 8 : 60, MOST_FITTED_ZOOM));
    else look(EMPTY_VIEW);
  };
  const focus = (refs: readonly string[]) => {
    const now = scene();
    const box = now && boundsOfRefs(now, refs);
    const { size } = store.get();
    if (!box || size.width === 0) return;
    const room = growBox(box, 8 * unitFor(jobShown(), sheetId() ?? ""));
    look(fitBox(room, size, 24, Math.max(MOST_FITTED_ZOOM, camera().zoom)));
  };
  const centre = (refs: readonly string[]) => {
    const now = scene();
    const box = now && boundsOfRefs(now, refs);
    const { size } = store.get();
    const { zoom } = camera();
    if (!box || size.width === 0) return;
    look({
      zoom,
      left: (box.left + box.right) / 2 - size.width / 2 / zoom,
      top: (box.top + box.bottom) / 2 - size.height / 2 / zoom,
    });
  };
  return {
    ...store,
    session,
    pointer: null,
    giveUp: () => false,
    show,
    scene,
    camera,
    look,
    fit,
    focus,
    centre,
    toSheet: (view) => fromView(camera(), view),
    toView: (sheet) => toView(camera(), sheet),
    reach: (touch) => (touch ? REACH.touch : REACH.mouse) / camera().zoom,
    unit: () => unitFor(drawnOf(session.get()), sheetId() ?? ""),
    preview: (change) => show({ preview: previewOf(drawnOf(session.get()), change) }),
    commit: (label, change) => {
      show({ preview: null });
      session.edit(label, change);
    },
  };
}

/** True when no part of the named things is in sight. */
export function outOfSight(board: Board, refs: readonly string[]): boolean {
  const scene = board.scene();
  const box = scene && boundsOfRefs(scene, refs);
  if (!box) return false;
  const view = viewBox(board.camera(), board.get().size);
  return (
    box.right < view.left || box.left > view.right || box.bottom < view.top || box.top > view.bottom
  );
}
