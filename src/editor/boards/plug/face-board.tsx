import { type KeyboardEvent, useMemo, useRef, useState } from "react";
import type { Point } from "../../../base/index.ts";
import type { CavityRef, Plug } from "../../../job/index.ts";
import { NEUTRAL_PLACES_NOTE } from "../../../plug/index.ts";
import { placeLead, placeOf, type Session } from "../../../session/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { useNoticePlace } from "../../use-notice-place.ts";
import type { Framing } from "./camera.ts";
import type { CavityFacts } from "./cavity-facts.ts";
import { type CavityAct, CavityMenu } from "./cavity-menu.tsx";
import { CavityPopover } from "./cavity-popover.tsx";
import { DrawPlugDialog } from "./draw-plug-dialog.tsx";
import { FaceCanvas } from "./face-canvas.tsx";
import { FaceHalves } from "./face-halves.tsx";
import { PhotoColourDialog } from "./photo-colour-dialog.tsx";
import { PhotoDialog } from "./photo-dialog.tsx";
import { plugActs } from "./plug-acts.ts";
import styles from "./plug-board.module.css";
import { type PlugAct, PlugToolbar } from "./plug-toolbar.tsx";
import { RenameMarkDialog } from "./rename-mark-dialog.tsx";
import type { BoardPointer } from "./use-face-gestures.ts";

interface FaceBoardProps {
  plug: Plug;
  plugs: readonly Plug[];
  /** Begins by putting in cavities, for a face that has none yet. */
  startAdding: boolean;
  onDraw: () => void;
  onPhoto: () => void;
}

/** What lies over the board, one thing at a time. */
type Over =
  | { readonly name: "change" | "on-photo" | "colours" }
  | { readonly name: "rename"; readonly facts: CavityFacts }
  | { readonly name: "menu" | "details"; readonly facts: CavityFacts; readonly at: BoardPointer };

/** `look` touches cavities; `arrange` moves them; `add` puts one down at every click. */
type Mode = "look" | "arrange" | "add";

/** The face of one plug with its toolbar and everything that opens from it. */
export function FaceBoard({ plug, plugs, startAdding, onDraw, onPhoto }: FaceBoardProps) {
  const session = useSession();
  const underBars = useRef<HTMLDivElement>(null);
  useNoticePlace(underBars);
  const [over, setOver] = useState<Over | null>(null);
  const [chosenMode, setMode] = useState<Mode>(startAdding ? "add" : "look");
  const operating = useSelected((state) => state.operate.on);
  // A machine that is being operated keeps its plugs as they are.
  const mode = operating ? "look" : chosenMode;
  const [framing, setFraming] = useState<Framing>("start");
  const [halves, setHalves] = useState(false);
  const [fitted, setFitted] = useState(0);
  const acts = useMemo(() => plugActs(session, plug), [session, plug]);
  const close = () => setOver(null);

  const tap = (facts: CavityFacts | null, at: Point) => {
    const { asks } = session.get().operate.leads;
    if (facts && operating && asks) placeLead(session, asks, facts.ref);
    else if (facts) acts.touch(facts);
    else if (mode === "add") acts.add(at);
    else session.show({ selection: [] });
  };

  const press = (facts: CavityFacts, event: KeyboardEvent) => {
    if (operating) return;
    if (event.key === "F2") setOver({ name: "rename", facts });
    else if (mode === "look") return;
    else if (event.key === "Delete" || event.key === "Backspace") acts.remove(facts);
    else if (!acts.nudge(facts, event.key, event.shiftKey)) return;
    event.preventDefault();
  };

  const actOn = (facts: CavityFacts, at: BoardPointer, what: CavityAct) => {
    switch (what) {
      case "describe":
        session.show({ selection: [facts.ref] });
        setOver({ name: "details", facts, at });
        return;
      case "rename":
        setOver({ name: "rename", facts });
        return;
      case "untie":
        acts.untie(facts);
        return;
      case "delete":
        acts.remove(facts);
        return;
      case "empty":
      case "blocked":
      case "plain":
        acts.setState(facts, what);
    }
  };

  const openMenu = (facts: CavityFacts | null, at: BoardPointer) => {
    if (facts && !operating) setOver({ name: "menu", facts, at });
  };

  const toolbar: Readonly<Record<PlugAct, () => void>> = {
    draw: onDraw,
    photo: onPhoto,
    change: () => setOver({ name: "change" }),
    "on-photo": () => setOver({ name: "on-photo" }),
    colours: () => setOver({ name: "colours" }),
    "remove-photo": acts.removePhoto,
    "confirm-places": acts.confirmPlaces,
    arrange: () => {
      setHalves(false);
      setMode(mode === "look" ? "arrange" : "look");
    },
    rehouse: acts.rehouse,
    halves: () => {
      setMode("look");
      setHalves(!halves);
    },
    delete: acts.removePlug,
    fit: () => {
      setFraming("whole");
      setFitted(fitted + 1);
    },
  };

  return (
    <>
      <PlugToolbar
        plug={plug}
        plugs={plugs}
        arranging={mode !== "look"}
        adding={mode === "add"}
        halves={halves}
        onAct={(what) => toolbar[what]()}
        onAdding={(adding) => setMode(adding ? "add" : "arrange")}
      />
      <div ref={underBars} />
      {halves ? (
        <FaceHalves plug={plug} fitted={fitted} onTap={tap} onMenu={openMenu} onKey={press} />
      ) : (
        <div className={styles.face}>
          <FaceCanvas
            plug={plug}
            framing={framing}
            onCamera={setFraming}
            arranging={mode !== "look"}
            onTap={tap}
            onMenu={openMenu}
            onMove={acts.move}
            onKey={press}
          />
          <FaceCaption mode={mode} neutral={plug.neutral ?? false} />
        </div>
      )}
      {over?.name === "change" && (
        <DrawPlugDialog
          plug={plug}
          onClose={close}
          onDraw={(drawn) => {
            acts.redraw(drawn);
            setFraming("start");
            close();
          }}
        />
      )}
      {over?.name === "on-photo" && (
        <PhotoDialog
          plug={plug}
          onClose={close}
          onDraw={(drawn) => {
            acts.redrawOnPhoto(drawn);
            setFraming("start");
            close();
          }}
        />
      )}
      {over?.name === "colours" && (
        <PhotoColourDialog plug={plug} cavity={chosenCavity(plug, session)} onClose={close} />
      )}
      {over?.name === "menu" && (
        <CavityMenu
          facts={over.facts}
          at={over.at}
          onAct={(what) => actOn(over.facts, over.at, what)}
          // The menu also closes after a choice, which may have opened something in its place.
          onClose={() => setOver((now) => (now?.name === "menu" ? null : now))}
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
            acts.rename(over.facts, mark);
            close();
          }}
        />
      )}
    </>
  );
}

/** The cavity of a plug that is chosen; null: none. */
const chosenCavity = (plug: Plug, session: Session): CavityRef | null =>
  session.get().selection.find((ref) => placeOf(session.get().job, ref)?.plug === plug.id) ?? null;

const SAYS: Readonly<Record<Mode, string | null>> = {
  look: null,
  arrange: "Drag cavities, or move the chosen one with the arrow keys",
  add: "Click where a cavity is; drag to move one",
};

/** Over the face: which side this is, and what a touch does when it does more than choose. */
function FaceCaption({ mode, neutral }: { mode: Mode; neutral: boolean }) {
  const side = useSelected((state) => state.side);
  const asks = useSelected(({ draft, operate }) =>
    draft ? draft.asks : operate.on ? operate.leads.asks : null,
  );
  const says = asks ? `Touch the cavity of the ${asks} lead` : SAYS[mode];
  return (
    <p className={styles.caption} aria-live="polite">
      <span>
        Seen from the <strong>{side} side</strong>
      </span>
      {says && <span className={styles.says}>{says}</span>}
      {neutral && <span>{NEUTRAL_PLACES_NOTE}</span>}
    </p>
  );
}
