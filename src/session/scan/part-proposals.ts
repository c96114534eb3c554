import { distance } from "../../base/index.ts";
import { pinsOf } from "../../circuit/index.ts";
import type { Id, PartKindName } from "../../job/index.ts";
import { commonShare, type PlacedExample, type SymbolProposal } from "../../scan/index.ts";
import { drawnOf } from "../changes/index.ts";
import { unitOf } from "../diagram/part-shape.ts";
import { sceneOf } from "../diagram/scene.ts";
import type { Session } from "../session.ts";
import { createStore, type Store } from "../store.ts";
import type { PageDesk } from "./page-desk.ts";
import { placeProposals } from "./part-placing.ts";
import { pictureFileOf } from "./picture-file.ts";

/** How far a proposal is to be believed, in a word. */
export type Sureness = "sure" | "likely" | "maybe";

const SURE = 0.8;
const LIKELY = 0.5;

const surenessOf = (confidence: number): Sureness =>
  confidence >= SURE ? "sure" : confidence >= LIKELY ? "likely" : "maybe";

/** One place on the picture that looks like a part, as the user sees it. */
export interface PartItem {
  readonly id: string;
  readonly proposal: SymbolProposal;
  /** What it would be placed as: what it looks most like, or what the user says. */
  readonly kind: PartKindName;
  /** "sure" once the user has said what it is. */
  readonly sureness: Sureness;
  /** What is to be looked at after placing; null for nothing. */
  readonly caution: string | null;
}

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
}

/** Proposes parts from the picture of the sheet at hand. Nothing is placed but what the user accepts. */
export interface PartsDesk extends Store<PartsState> {
  /** Looks over the whole picture and shows what it finds. */
  find(): Promise<void>;
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
    const found = { ...asked, proposals };
    store.set(() => ({ ...NOTHING, isOpen: true, found, like }));
  };

  let last: ({ readonly of: readonly unknown[] } & Open) | null = null;
  const open = (): Open => {
    const { found, left, said, like } = store.get();
    if (!found || !holds(found)) return NOTHING_OPEN;
    const { parts } = sceneOf(drawnOf(session.get()).diagram, found.sheet);
    const of = [found, left, said, parts, like];
    if (last && of.every((one, n) => one === last?.of[n])) return last;
    const boxes = parts
      .filter(({ part }) => part.kind !== "splice")
      .map(({ box, part }) => ({ box, isModule: part.kind === "module" }));
    const splices = parts.filter(({ part }) => part.kind === "splice");
    const isSpliced = ({ at, unit }: SymbolProposal) =>
      splices.some(({ part }) => distance(at, [part.at[0], part.at[1]]) <= AT_JOINT * unit);
    const all = found.proposals.flatMap((proposal, n): PartItem[] => {
      const id = String(n);
      if (left.has(id)) return [];
      if (like !== null && proposal.example !== like) return [];
      if (proposal.kind === "splice" && isSpliced(proposal)) return [];
      const isModule = proposal.kind === "module";
      if (
        boxes.some(
          (one) => one.isModule === isModule && commonShare(one.box, proposal.box) >= COVERED,
        )
      )
        return [];
      return [itemOf(id, proposal, said.get(id))];
    });
    const isJoint = ({ kind }: PartItem) => kind === "splice";
    last = {
      of,
      items: all.filter((one) => !isJoint(one)).sort(inOrder),
      joints: all.filter(isJoint).sort(inOrder),
    };
    return last;
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
    find: () => look(null),
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

/** What is proposed and neither placed nor left. */
interface Open {
  readonly items: readonly PartItem[];
  readonly joints: readonly PartItem[];
}

/** A splice this near to a dot, in units of its size, is that dot's. */
const AT_JOINT = 1.5;

const SURENESSES: readonly Sureness[] = ["sure", "likely", "maybe"];

/** The sure ones first; each kind of sureness from the top of the picture down. */
function inOrder(a: PartItem, b: PartItem): number {
  return (
    SURENESSES.indexOf(a.sureness) - SURENESSES.indexOf(b.sureness) ||
    a.proposal.box.top - b.proposal.box.top
  );
}

const NOTHING_OPEN: Open = { items: [], joints: [] };

function itemOf(id: string, proposal: SymbolProposal, said: PartKindName | undefined): PartItem {
  return {
    id,
    proposal,
    kind: said ?? proposal.kind,
    sureness: said === undefined ? surenessOf(proposal.confidence) : "sure",
    caution: cautionOf(proposal, said ?? proposal.kind),
  };
}

/** What the picture does not say of such a part, or what can't be drawn as it is printed. */
function cautionOf({ isMirrored, pins, ways }: SymbolProposal, kind: PartKindName): string | null {
  if (isMirrored) return "Printed the other way round: check its pins.";
  if (kind === "switch") return "Check its contacts and positions.";
  if (kind === "relay") return "Check which contact is used.";
  if (kind === "inline" && ways !== undefined && ways > 1)
    return `${ways} pins, numbered as they stand: check their marks.`;
  if (kind === "module" && pins)
    return `${pins.length} pins, numbered as they stand: check their marks.`;
  return null;
}

/** Share of the smaller of two boxes in common at which the one is placed on the other. */
const COVERED = 0.35;

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
