import { distance, type Point } from "../../base/index.ts";
import type { Id, Job } from "../../job/index.ts";
import type { ProposedCorners } from "../../scan/index.ts";
import type { Session } from "../session.ts";
import { createStore, type Store } from "../store.ts";

/** Sheets whose picture was just brought in and of which nobody has answered yet. */
export interface JustImported {
  readonly sheets: readonly Id[];
  /** Those of them that it would do good to square up: the screen asks. */
  readonly offered: readonly Id[];
}

const NOTHING_IMPORTED: JustImported = { sheets: [], offered: [] };

/**
 * Pictures of a job just opened that nothing was done with yet. What was asked of them before is not kept with
 * the job: rather asked twice than taken as answered.
 */
function untouched({ diagram: { sheets, parts } }: Job): JustImported {
  const drawnOn = new Set(parts.map(({ sheet }) => sheet));
  const bare = sheets.filter(
    ({ id, image, original, corners }) => image && !original && !corners && !drawnOn.has(id),
  );
  return bare.length === 0 ? NOTHING_IMPORTED : { sheets: bare.map(({ id }) => id), offered: [] };
}

const stores = new WeakMap<Session, Store<JustImported>>();

export function justImported(session: Session): Store<JustImported> {
  const known = stores.get(session);
  if (known) return known;
  const store = createStore(untouched(session.get().job));
  stores.set(session, store);
  // Another job may use the same sheet ids.
  let { key } = session.get();
  session.subscribe(() => {
    const now = session.get().key;
    if (now !== key) store.set(() => untouched(session.get().job));
    key = now;
  });
  return store;
}

/** Asked once for each picture, until the job is opened anew with nothing done to it. */
export const noteImported = (session: Session, sheet: Id): void =>
  justImported(session).set(({ sheets, offered }) => ({
    sheets: [...sheets.filter((one) => one !== sheet), sheet],
    offered,
  }));

/** Has the screen ask of a sheet just imported whether it is to be squared up. */
export const offerSquaring = (session: Session, sheet: Id): void =>
  justImported(session).set(({ sheets, offered }) => ({
    sheets,
    offered: [...offered.filter((one) => one !== sheet), sheet],
  }));

export const settleImported = (session: Session, sheet: Id): void =>
  justImported(session).set(({ sheets, offered }) => ({
    sheets: sheets.filter((one) => one !== sheet),
    offered: offered.filter((one) => one !== sheet),
  }));

/** Less sure corners are not worth a question. */
const SURE = 0.75;
/** Corners within this share of the diagonal of the picture's own are those. */
const OWN = 0.015;
/** Degrees off level or upright that one sees. */
const ASKEW = 0.4;

/** Whether squaring up by these corners would do a picture some good that one sees. */
export function isWorthSquaring(
  { corners, of, confidence, bow, cutOff }: ProposedCorners,
  { width, height }: { readonly width: number; readonly height: number },
): boolean {
  if (confidence < SURE || cutOff.length > 0) return false;
  const own: readonly Point[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  const near = OWN * Math.hypot(width, height);
  const isAway = corners.some((corner, n) => distance(corner, own[n] as Point) > near);
  if (!isAway) return false;
  // A frame lies within its page anyway: straight already, there is nothing to do.
  return (
    of === "page" ||
    bow !== null ||
    corners.some((corner, n) => isAskew(corner, corners[(n + 1) % 4] as Point))
  );
}

function isAskew([ax, ay]: Point, [bx, by]: Point): boolean {
  const degrees = (Math.atan2(by - ay, bx - ax) * 180) / Math.PI;
  return Math.abs(degrees - 90 * Math.round(degrees / 90)) > ASKEW;
}
