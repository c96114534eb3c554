import type { Point } from "../../base/index.ts";
import { type Id, isFixedProbe, type Job, ownerOf, splitRef } from "../../job/index.ts";
import { drawnOf } from "../changes/index.ts";
import {
  ALIGNMENTS,
  type Alignment,
  alignParts,
  clipOf,
  heldClip,
  holdClip,
  moveThings,
  pasteClip,
  removeModulePin,
  removeThings,
  requestView,
  sceneOf,
  sheetForDrawing,
  tidyCorners,
  turnParts,
  unitFor,
} from "../diagram/index.ts";
import type { Session } from "../session.ts";
import type { Tool } from "../state.ts";
import type { Command } from "./command.ts";

const named = (ids: readonly string[], many: string): string =>
  ids.length === 1 ? (ids[0] as string) : `${ids.length} ${many}`;

interface Chosen {
  readonly parts: readonly Id[];
  readonly wires: readonly Id[];
}

const NOTHING: Chosen = { parts: [], wires: [] };
/** Every button asks again at every change of state, and a diagram may hold thousands of wires. */
const answers = new WeakMap<readonly string[], { diagram: Job["diagram"]; chosen: Chosen }>();

function chosen(session: Session): Chosen {
  const { selection } = session.get();
  const job = drawnOf(session.get());
  if (selection.length === 0) return NOTHING;
  const known = answers.get(selection);
  if (known?.diagram === job.diagram) return known.chosen;
  const of = (list: readonly { id: Id }[]) => {
    const ids = new Set(list.map((one) => one.id));
    return selection.filter((ref) => ids.has(ref));
  };
  const answer = { parts: of(job.diagram.parts), wires: of(job.diagram.wires) };
  answers.set(selection, { diagram: job.diagram, chosen: answer });
  return answer;
}

const chosenThings = (session: Session): readonly Id[] => {
  const { parts, wires } = chosen(session);
  return [...parts, ...wires];
};

/** The chosen pins of modules: they alone can be taken out one by one. */
function chosenPins(session: Session): readonly string[] {
  const { selection } = session.get();
  const job = drawnOf(session.get());
  const refs = selection.filter((ref) => ref.includes(":"));
  return refs.filter((ref) =>
    job.diagram.parts.some(
      (part) =>
        part.kind === "module" &&
        part.id === ownerOf(ref) &&
        part.pins.some((pin) => pin.id === splitRef(ref).name),
    ),
  );
}

const sameTool = (a: Tool, b: Tool) =>
  a.name === b.name && (a.name !== "wire" || b.name !== "wire" || a.free === b.free);

const takesUp = (id: string, label: string, keys: readonly string[], tool: Tool): Command => ({
  id,
  label,
  keys,
  canRun: (session) => !sameTool(session.get().tool, tool),
  run: (session) => session.show({ tool }),
});

const nudge = (key: string, way: string, by: Point): readonly Command[] =>
  [1, 10].map((step): Command => {
    const far = step === 10 ? " far" : "";
    return {
      id: `nudge-${way}${step === 10 ? "-far" : ""}`,
      label: `Nudge ${way}${far}`,
      keys: [step === 10 ? `Shift+${key}` : key],
      canRun: (session) => chosenThings(session).length > 0,
      run: (session) => {
        const ids = chosenThings(session);
        session.edit(`Nudge ${named(ids, "things")}`, (draft) =>
          moveThings(draft, ids, [by[0] * step, by[1] * step]),
        );
      },
    };
  });

const ALIGNMENT_LABELS: Readonly<Record<Alignment, string>> = {
  left: "Align left edges",
  middle: "Align in a column",
  right: "Align right edges",
  top: "Align top edges",
  centre: "Align in a row",
  bottom: "Align bottom edges",
};

const align = (how: Alignment): Command => ({
  id: `align-${how}`,
  label: ALIGNMENT_LABELS[how],
  detail: (session) => (chosen(session).parts.length === 1 ? "with the picture" : null),
  canRun: (session) => chosen(session).parts.length > 0,
  run: (session) => {
    const { parts } = chosen(session);
    session.edit(ALIGNMENT_LABELS[how], (draft) => alignParts(draft, parts, how));
  },
});

function copyChosen(session: Session): boolean {
  const clip = clipOf(drawnOf(session.get()), session.get().selection);
  if (clip) holdClip(clip);
  return clip !== null;
}

/** Pastes next to what was copied, a step further each time something lies there already. */
function pasteBeside(session: Session, label: string, clip = heldClip()): void {
  const { sheet } = session.get();
  const job = drawnOf(session.get());
  if (!clip) return;
  const step = 3 * unitFor(job, sheet ?? "");
  let by: Point = [step, step];
  const places = clip.parts.map((part) => part.at);
  const first = places[0];
  const taken = (at: Point) =>
    job.diagram.parts.some(
      (part) => part.sheet === sheet && part.at[0] === at[0] && part.at[1] === at[1],
    );
  while (first && taken([first[0] + by[0], first[1] + by[1]])) by = [by[0] + step, by[1] + step];
  let made: readonly Id[] = [];
  session.edit(label, (draft) => {
    made = pasteClip(draft, clip, sheetForDrawing(draft, sheet), by);
  });
  session.show({ selection: made });
}

function removeChosen(session: Session, label: string): void {
  const things = chosenThings(session);
  const owners = new Set(things);
  const pins = chosenPins(session).filter((ref) => !owners.has(ownerOf(ref)));
  session.edit(`${label} ${named([...things, ...pins], "things")}`, (draft) => {
    removeThings(draft, things);
    for (const ref of pins) removeModulePin(draft, ownerOf(ref), splitRef(ref).name);
  });
  session.show({ selection: [] });
}

const onSheet = (job: Job, sheet: Id | null): readonly Id[] => {
  if (sheet === null) return [];
  const scene = sceneOf(job.diagram, sheet);
  return [...scene.partById.keys(), ...scene.wireById.keys()];
};

const turns = (id: string, label: string, keys: readonly string[], degrees: number): Command => ({
  id,
  label,
  keys,
  canRun: (session) => chosen(session).parts.length > 0,
  run: (session) => {
    const { parts } = chosen(session);
    session.edit(`Turn ${named(parts, "parts")}`, (draft) => turnParts(draft, parts, degrees));
  },
});

/** True when the chief chosen thing is drawn on the diagram and has words that can be edited. */
function editable(session: Session): string | null {
  const { selection } = session.get();
  const job = drawnOf(session.get());
  const ref = selection[0];
  if (ref === undefined || isFixedProbe(ref)) return null;
  const owner = ownerOf(ref);
  const drawn =
    job.diagram.parts.some((part) => part.id === owner) ||
    job.diagram.wires.some((wire) => wire.id === ref);
  return drawn ? ref : null;
}

export const DIAGRAM_COMMANDS: readonly Command[] = [
  takesUp("select-tool", "Select", ["V"], { name: "select" }),
  takesUp("pan-tool", "Move the view", ["H"], { name: "pan" }),
  takesUp("wire-tool", "Draw wires", ["W"], { name: "wire", free: false }),
  takesUp("free-wire-tool", "Draw wires at any angle", ["Shift+W"], { name: "wire", free: true }),
  {
    id: "place-part",
    label: "Place a part",
    keys: ["P"],
    canRun: () => true,
    run: () => {
      requestView({ ask: "palette" });
    },
  },
  {
    id: "edit-words",
    label: "Rename",
    keys: ["F2"],
    detail: editable,
    canRun: (session) => editable(session) !== null,
    run: (session) => {
      const ref = editable(session);
      if (ref) requestView({ ask: "edit", ref });
    },
  },
  turns("turn", "Turn clockwise", ["R"], 90),
  turns("turn-back", "Turn anticlockwise", ["Shift+R"], -90),
  {
    id: "copy",
    label: "Copy",
    keys: ["Mod+C"],
    canRun: (session) => chosen(session).parts.length > 0,
    run: (session) => {
      copyChosen(session);
    },
  },
  {
    id: "cut",
    label: "Cut",
    keys: ["Mod+X"],
    canRun: (session) => chosen(session).parts.length > 0,
    run: (session) => {
      if (copyChosen(session)) removeChosen(session, "Cut");
    },
  },
  {
    id: "paste",
    label: "Paste",
    keys: ["Mod+V"],
    canRun: () => heldClip() !== null,
    run: (session) => pasteBeside(session, "Paste"),
  },
  {
    id: "duplicate",
    label: "Duplicate",
    keys: ["Mod+D"],
    canRun: (session) => chosen(session).parts.length > 0,
    run: (session) => {
      const { parts } = chosen(session);
      const clip = clipOf(drawnOf(session.get()), parts);
      if (clip) pasteBeside(session, `Duplicate ${named(parts, "parts")}`, clip);
    },
  },
  {
    id: "delete",
    label: "Delete",
    keys: ["Delete", "Backspace"],
    canRun: (session) => chosenThings(session).length + chosenPins(session).length > 0,
    run: (session) => removeChosen(session, "Delete"),
  },
  {
    id: "select-all",
    label: "Select everything on the sheet",
    keys: ["Mod+A"],
    canRun: (session) => onSheet(drawnOf(session.get()), session.get().sheet).length > 0,
    run: (session) =>
      session.show({ selection: onSheet(drawnOf(session.get()), session.get().sheet) }),
  },
  {
    id: "straighten-wire",
    label: "Take out idle corners",
    canRun: (session) => chosen(session).wires.length > 0,
    run: (session) => {
      const { wires } = chosen(session);
      session.edit(`Straighten ${named(wires, "wires")}`, (draft) => {
        for (const id of wires) tidyCorners(draft, id);
      });
    },
  },
  ...nudge("ArrowLeft", "left", [-1, 0]),
  ...nudge("ArrowRight", "right", [1, 0]),
  ...nudge("ArrowUp", "up", [0, -1]),
  ...nudge("ArrowDown", "down", [0, 1]),
  ...ALIGNMENTS.map(align),
  {
    id: "zoom-to-fit",
    label: "Show the whole sheet",
    keys: ["F"],
    canRun: (session) => session.get().sheet !== null,
    run: () => {
      requestView({ ask: "fit" });
    },
  },
  {
    id: "zoom-to-selection",
    label: "Show what is selected",
    keys: ["Shift+F"],
    canRun: (session) => editable(session) !== null,
    run: (session) => {
      requestView({ ask: "focus", refs: session.get().selection });
    },
  },
  {
    id: "zoom-in",
    label: "Zoom in",
    keys: ["+", "="],
    canRun: (session) => session.get().sheet !== null,
    run: () => {
      requestView({ ask: "zoom", by: 1.25 });
    },
  },
  {
    id: "zoom-out",
    label: "Zoom out",
    keys: ["-"],
    canRun: (session) => session.get().sheet !== null,
    run: () => {
      requestView({ ask: "zoom", by: 0.8 });
    },
  },
];
