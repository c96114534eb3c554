import { distance, keptLast } from "../../base/index.ts";
import { pinsOf } from "../../circuit/index.ts";
import type { Id, PartKindName } from "../../job/index.ts";
import type { PlacedExample, SymbolProposal } from "../../scan/index.ts";
import { drawnOf } from "../changes/index.ts";
import { unitOf } from "../diagram/part-shape.ts";
import { sceneOf } from "../diagram/scene.ts";
import type { Session } from "../session.ts";
import { createStore, type Store } from "../store.ts";
import type { PageDesk } from "./page-desk.ts";
import { NOTHING_OPEN, type OpenParts, openParts, type PartItem } from "./part-items.ts";
import { placeProposals } from "./part-placing.ts";
import { pictureFileOf } from "./picture-file.ts";

export interface PartsState {
  readonly isOpen: boolean;
  /** What was found, and on which sheet's picture. */
  readonly found: FoundParts | null;
  /** Ids of proposals that the user leaves. */
  readonly left: ReadonlySet<string>;
  /** What the user says that a proposal is. */
  readonly said: ReadonlyMap<string, PartKindName>;
  /** The one that is looked at. */
  readonly chosen: string | null;
  /** Only what looks like this placed part is shown. */
  readonly like: Id | null;
}

export interface FoundParts {
  readonly key: string;
  readonly sheet: Id;
  readonly file: string;
  readonly proposals: readonly SymbolProposal[];
  /** What was placed on the sheet then: with other examples other things are found. */
  readonly examples: readonly PlacedExample[];
}

/** Proposes parts from the picture of the sheet at hand. Nothing is placed but what the user accepts. */
export interface PartsDesk extends Store<PartsState> {
  /** Shows what is found on the picture; looks it over only where it or what is placed is another than last time. */
  find(): Promise<void>;
  /** Looks over the whole picture again: what was left is proposed again, too. */
  findAgain(): Promise<void>;
  /** Looks for what is printed like a placed part. */
  findMoreLike(part: Id): Promise<void>;
  close(): void;
  /** Dots at which lines are joined, neither placed nor left. Tracing makes their splices by itself. */
  joints(): readonly PartItem[];
  /** What is proposed and neither placed nor left, the sure ones first; the same list while nothing changes. */
  items(): readonly PartItem[];
  choose(id: string | null): void;
  /** Chooses the next or the one before, all round. */
  step(by: 1 | -1): void;
  /** Says that a proposal is another kind. */
  say(id: string, kind: PartKindName): void;
  leave(id: string): void;
  /** Places one; it is chosen on the board. */
  place(id: string): void;
  /** Places all that are sure but joints, as one edit; nothing is chosen after it. */
  placeSure(): void;
  /** Places a splice at every joint that is sure, as one edit. */
  placeJoints(): void;
}

const desks = new WeakMap<Session, PartsDesk>();

/** Null where the session was given no way to work on pictures. */
export const partsDeskOf = (session: Session): PartsDesk | null => desks.get(session) ?? null;

/** Has parts proposed from this session's pictures. To be called before anything is shown. */
export function keepProposing(session: Session, pages: PageDesk): PartsDesk {
  const desk = createPartsDesk(session, pages);
  desks.set(session, desk);
  return desk;
}

const NOTHING: PartsState = {
  isOpen: false,
  found: null,
  left: new Set(),
  said: new Map(),
  chosen: null,
  like: null,
};

export function createPartsDesk(session: Session, pages: PageDesk): PartsDesk {
  const store = createStore<PartsState>(NOTHING);
  const show = (change: Partial<PartsState>) => store.set((state) => ({ ...state, ...change }));

  const standing = () => {
    const { key, sheet } = session.get();
    const file = pictureFileOf(session.get());
    return sheet === null || file === null ? null : { key, sheet, file };
  };
  const holds = ({ key, sheet, file }: FoundParts) => {
    const now = standing();
    return now?.key === key && now.sheet === sheet && now.file === file;
  };
  session.subscribe(() => {
    const { found } = store.get();
    if (found && !holds(found)) store.set(() => NOTHING);
  });

  const look = async (like: Id | null) => {
    const asked = standing();
    if (!asked) return;
    const examples = examplesOf(session, asked.sheet);
    const proposals = await pages.run("Finding parts", (port, tell) =>
      port.findParts(
        { examples: like === null ? examples : examples.filter(({ id }) => id === like) },
        tell,
      ),
    );
    if (!proposals) return;
    const found = { ...asked, proposals, examples };
    store.set(() => ({ ...NOTHING, isOpen: true, found, like }));
  };

  /** Whether looking over the whole picture now would find what is found already. */
  const isFoundNow = () => {
    const { found, like } = store.get();
    return (
      found !== null &&
      like === null &&
      holds(found) &&
      areAlike(found.examples, examplesOf(session, found.sheet))
    );
  };

  const openOf = keptLast(openParts);
  const open = (): OpenParts => {
    const { found, left, said, like } = store.get();
    if (!found || !holds(found)) return NOTHING_OPEN;
    const { parts } = sceneOf(drawnOf(session.get()).diagram, found.sheet);
    return openOf(found.proposals, parts, left, said, like);
  };
  const items = () => open().items;
  const joints = () => open().joints;
  /** The list that a place is in: what is stepped through with it. */
  const listWith = (id: string | null): readonly PartItem[] =>
    joints().some((one) => one.id === id) ? joints() : items();

  const place = (chosen: readonly PartItem[], label: string): readonly Id[] => {
    const { found } = store.get();
    if (!found || chosen.length === 0) return [];
    let ids: readonly Id[] = [];
    session.edit(label, (draft) => {
      ids = placeProposals(draft, found.sheet, chosen);
    });
    return ids;
  };
  /** Many rings would hide what was placed, and one press of Delete take it all away. */
  const placeMany = (chosen: readonly PartItem[], label: string) => {
    place(chosen, label);
    session.show({ selection: [] });
    show({ chosen: null });
  };

  const after = (id: string): string | null => {
    const all = listWith(id);
    const at = all.findIndex((one) => one.id === id);
    return all[at + 1]?.id ?? all[at - 1]?.id ?? null;
  };

  return {
    ...store,
    items,
    joints,
    find: async () => (isFoundNow() ? show({ isOpen: true }) : look(null)),
    findAgain: () => look(null),
    findMoreLike: (part) => look(part),
    close: () => show({ isOpen: false, chosen: null }),
    choose: (id) => show({ chosen: id }),
    step: (by) => {
      const all = listWith(store.get().chosen);
      if (all.length === 0) return;
      const at = all.findIndex((one) => one.id === store.get().chosen);
      const next = at < 0 ? (by > 0 ? 0 : all.length - 1) : (at + by + all.length) % all.length;
      show({ chosen: all[next]?.id ?? null });
    },
    say: (id, kind) => show({ said: new Map(store.get().said).set(id, kind) }),
    leave: (id) => {
      const next = after(id);
      show({ left: new Set(store.get().left).add(id), chosen: next });
    },
    place: (id) => {
      const item = listWith(id).find((one) => one.id === id);
      if (!item) return;
      const next = after(id);
      const ids = place([item], `Place ${item.kind} from the picture`);
      session.show({ selection: [...ids] });
      show({ chosen: next });
    },
    placeSure: () => {
      const sure = items().filter((one) => one.sureness === "sure");
      placeMany(
        sure,
        sure.length === 1 ? "Place a part found" : `Place ${sure.length} parts found`,
      );
    },
    placeJoints: () => {
      const sure = joints().filter((one) => one.sureness === "sure");
      placeMany(
        sure,
        sure.length === 1 ? "Place a joint found" : `Place ${sure.length} joints found`,
      );
    },
  };
}

/** Whether the same is placed at the same places: names and values are no part of how a symbol looks. */
const areAlike = (a: readonly PlacedExample[], b: readonly PlacedExample[]): boolean =>
  JSON.stringify(a) === JSON.stringify(b);

/** What is placed on a sheet, as examples of what its parts look like. */
function examplesOf(session: Session, sheet: Id): PlacedExample[] {
  const { parts } = sceneOf(drawnOf(session.get()).diagram, sheet);
  return parts
    .filter(({ part }) => pinsOf(part).length > 0 && part.kind !== "splice")
    .map(({ part, box, pins }) => ({
      id: part.id,
      kind: part.kind,
      box,
      at: [part.at[0], part.at[1]],
      turn: part.turn,
      unit: unitOf(part),
      ends: pins
        .map(({ at }) => at)
        .sort(
          (a, b) =>
            distance(a, part.at as [number, number]) - distance(b, part.at as [number, number]),
        ),
    }));
}
