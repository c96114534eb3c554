import { type KeyboardEvent, useCallback, useState } from "react";
import type { Point } from "../../../base/index.ts";
import { cavityRef, freeId, idsOf, type Plug } from "../../../job/index.ts";
import { nextMark } from "../../../plug/index.ts";
import {
  addCavity,
  deleteCavity,
  deletePlug,
  moveCavity,
  redrawPlug,
  rehousePlug,
  renameMark,
  setCavityState,
  unlink,
} from "../../../session/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import type { Camera } from "./camera.ts";
import type { CavityFacts } from "./cavity-facts.ts";
import { type CavityAct, CavityMenu } from "./cavity-menu.tsx";
import { CavityPopover } from "./cavity-popover.tsx";
import { DrawPlugDialog } from "./draw-plug-dialog.tsx";
import { EmptyPlug } from "./empty-plug.tsx";
import { FaceCanvas } from "./face-canvas.tsx";
import { PhotoDialog } from "./photo-dialog.tsx";
import type { PlanForm } from "./plan-form.ts";
import styles from "./plug-board.module.css";
import { type PlugAct, PlugToolbar } from "./plug-toolbar.tsx";
import { RenameMarkDialog } from "./rename-mark-dialog.tsx";
import type { BoardPointer } from "./use-face-gestures.ts";

/** What lies over the board, one thing at a time. */
type Over =
  | { readonly name: "draw"; readonly start?: PlanForm }
  | { readonly name: "change" | "photo" }
  | { readonly name: "menu"; readonly facts: CavityFacts; readonly at: BoardPointer }
  | { readonly name: "details"; readonly facts: CavityFacts; readonly at: BoardPointer }
  | { readonly name: "rename"; readonly facts: CavityFacts };

/** `look` touches cavities; `arrange` moves them; `add` puts one down at every click. */
type Mode = "look" | "arrange" | "add";

/** Steps of the arrow keys while arranging, millimetres: plain, and with Shift. */
const NUDGE = { plain: 0.5, fine: 0.1 };

/** The plug board: the face of the plug at hand, or the ways to draw one. Fills its parent. */
export function PlugBoard() {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const plugId = useSelected((state) => state.plug);
  const draft = useSelected((state) => state.draft);
  const plug = job.plugs.find((one) => one.id === plugId) ?? null;
  const [over, setOver] = useState<Over | null>(null);
  const [mode, setMode] = useState<Mode>("look");
  // Kept with the plug it belongs to, so that another plug starts with its whole face shown.
  const [moved, setMoved] = useState<{ plug: string; camera: Camera } | null>(null);
  const onCamera = useCallback(
    (camera: Camera | null) => setMoved(camera && plugId ? { plug: plugId, camera } : null),
    [plugId],
  );
  const close = () => setOver(null);

  const insert = (drawn: Omit<Plug, "id">, label: (id: string) => string) => {
    const id = freeId(idsOf(job), "X");
    session.edit(label(id), (draft) => {
      draft.plugs.push({ id, ...drawn });
    });
    session.show({ plug: id, side: drawn.side, selection: [] });
    close();
  };

  const draw = (drawn: Omit<Plug, "id">, kind: PlanForm["kind"]) => {
    insert(drawn, (id) => `Draw plug ${id}`);
    setMode(kind === "free" ? "add" : "look");
  };

  const redraw = (target: Plug, drawn: Omit<Plug, "id">) => {
    session.edit(`Change the arrangement of ${target.id}`, (draft) =>
      redrawPlug(draft, target.id, drawn),
    );
    session.show({ side: drawn.side });
    onCamera(null);
    close();
  };

  const dialogs = (
    <>
      {over?.name === "draw" && (
        <DrawPlugDialog plug={null} start={over.start} onClose={close} onDraw={draw} />
      )}
      {over?.name === "photo" && (
        <PhotoDialog
          onClose={close}
          onDraw={(drawn) => insert(drawn, (id) => `Draw plug ${id} from a photo`)}
        />
      )}
    </>
  );

  if (!plug) {
    return (
      <div className={styles.board}>
        <EmptyPlug
          onDraw={(start) => setOver({ name: "draw", start })}
          onPhoto={() => setOver({ name: "photo" })}
        />
        {dialogs}
      </div>
    );
  }

  const placeOf = (facts: CavityFacts) => ({ plug: plug.id, index: facts.index });

  const act = (facts: CavityFacts, what: CavityAct, at: BoardPointer) => {
    close();
    const place = placeOf(facts);
    switch (what) {
      case "describe":
        session.show({ selection: [facts.ref] });
        setOver({ name: "details", facts, at });
        return;
      case "rename":
        setOver({ name: "rename", facts });
        return;
      case "untie":
        session.edit(`Untie ${facts.ref}`, (draft) => unlink(draft, facts.ref));
        return;
      case "delete":
        session.edit(`Delete cavity ${facts.ref}`, (draft) => deleteCavity(draft, place));
        session.show({ selection: [] });
        return;
      case "empty":
      case "blocked":
      case "plain":
        session.edit(
          what === "plain" ? `Mark ${facts.ref} as in use` : `Mark ${facts.ref} as ${what}`,
          (draft) => setCavityState(draft, place, what),
        );
    }
  };

  const tap = (facts: CavityFacts | null, at: Point) => {
    if (facts && draft?.asks) {
      const filled = { ...draft, [draft.asks]: facts.ref };
      const asks = draft.asks === "red" && filled.black === null ? "black" : null;
      session.show({ draft: { ...filled, asks } });
    } else if (facts) {
      session.show({ selection: [facts.ref] });
    } else if (mode === "add") {
      add(at);
    } else {
      session.show({ selection: [] });
    }
  };

  const add = (at: Point) => {
    const mark = nextMark(plug.cavities.map((cavity) => cavity.mark));
    const rounded: Point = [hundredth(at[0]), hundredth(at[1])];
    session.edit(`Add cavity ${cavityRef(plug.id, mark)}`, (draft) => {
      addCavity(draft, plug.id, mark, rounded);
    });
    session.show({ selection: [cavityRef(plug.id, mark)] });
  };

  const move = (facts: CavityFacts, at: Point) =>
    session.edit(`Move cavity ${facts.ref}`, (draft) =>
      moveCavity(draft, placeOf(facts), [hundredth(at[0]), hundredth(at[1])]),
    );

  const press = (facts: CavityFacts, event: KeyboardEvent) => {
    const step = NUDGES[event.key];
    if (event.key === "F2") setOver({ name: "rename", facts });
    else if (event.key === "Delete" || event.key === "Backspace") {
      act(facts, "delete", { clientX: 0, clientY: 0 });
    } else if (step && mode !== "look") {
      const length = event.shiftKey ? NUDGE.fine : NUDGE.plain;
      const mirrored = session.get().side === plug.side ? 1 : -1;
      const [x, y] = facts.cavity.at;
      move(facts, [x + step[0] * length * mirrored, y + step[1] * length]);
    } else return;
    event.preventDefault();
  };

  const pick = (what: PlugAct) => {
    switch (what) {
      case "draw":
        setOver({ name: "draw" });
        return;
      case "photo":
      case "change":
        setOver({ name: what });
        return;
      case "arrange":
        setMode(mode === "look" ? "arrange" : "look");
        return;
      case "rehouse":
        session.edit(`Draw the housing of ${plug.id}`, (draft) => rehousePlug(draft, plug.id));
        return;
      case "delete":
        session.edit(`Delete plug ${plug.id}`, (draft) => deletePlug(draft, plug.id));
        session.show({ selection: [] });
        return;
      case "fit":
        onCamera(null);
    }
  };

  return (
    <div className={styles.board}>
      <PlugToolbar
        plug={plug}
        plugs={job.plugs}
        arranging={mode !== "look"}
        adding={mode === "add"}
        onAct={pick}
        onAdding={(adding) => setMode(adding ? "add" : "arrange")}
      />
      <div className={styles.face}>
        <FaceCanvas
          key={plug.id}
          plug={plug}
          camera={moved?.plug === plug.id ? moved.camera : null}
          onCamera={onCamera}
          arranging={mode !== "look"}
          onTap={tap}
          onMenu={(facts, _at, pointer) => facts && setOver({ name: "menu", facts, at: pointer })}
          onMove={move}
          onKey={press}
        />
        <FaceCaption mode={mode} empty={plug.cavities.length === 0} />
      </div>
      {dialogs}
      {over?.name === "change" && (
        <DrawPlugDialog plug={plug} onClose={close} onDraw={(drawn) => redraw(plug, drawn)} />
      )}
      {over?.name === "menu" && (
        <CavityMenu
          facts={over.facts}
          at={over.at}
          onAct={(what) => act(over.facts, what, over.at)}
          onClose={close}
        />
      )}
      {over?.name === "details" && (
        <CavityPopover cavity={over.facts.ref} at={over.at} onClose={close} />
      )}
      {over?.name === "rename" && (
        <RenameMarkDialog
          mark={over.facts.mark}
          taken={plug.cavities
            .filter((_, index) => index !== over.facts.index)
            .map((cavity) => cavity.mark)}
          onClose={close}
          onRename={(mark) => {
            const { ref } = over.facts;
            session.edit(`Change mark ${ref} to ${mark}`, (draft) =>
              renameMark(draft, placeOf(over.facts), mark),
            );
            session.show({ selection: [cavityRef(plug.id, mark)] });
            close();
          }}
        />
      )}
    </div>
  );
}

const NUDGES: Readonly<Record<string, Point>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

const hundredth = (mm: number) => Math.round(mm * 100) / 100;

/** Over the face: which side this is, and what a touch does when it does more than choose. */
function FaceCaption({ mode, empty }: { mode: Mode; empty: boolean }) {
  const side = useSelected((state) => state.side);
  const asks = useSelected((state) => state.draft?.asks ?? null);
  const says = asks
    ? `Touch the cavity of the ${asks} lead`
    : mode === "add" || (mode === "arrange" && empty)
      ? "Click where a cavity is; drag to move one"
      : mode === "arrange"
        ? "Drag cavities, or move the chosen one with the arrow keys"
        : null;
  return (
    <p className={styles.caption} aria-live="polite">
      <span>
        Seen from the <strong>{side} side</strong>
      </span>
      {says && <span className={styles.says}>{says}</span>}
    </p>
  );
}
