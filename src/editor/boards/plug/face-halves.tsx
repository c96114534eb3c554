import { type KeyboardEvent, type ReactNode, useState } from "react";
import type { Point } from "../../../base/index.ts";
import type { Plug } from "../../../job/index.ts";
import { NEUTRAL_PLACES_NOTE } from "../../../plug/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import type { Framing } from "./camera.ts";
import type { CavityFacts } from "./cavity-facts.ts";
import { FaceCanvas } from "./face-canvas.tsx";
import styles from "./face-halves.module.css";
import type { BoardPointer } from "./use-face-gestures.ts";

interface FaceHalvesProps {
  plug: Plug;
  /** Counts how often the whole was asked for: both views then go back to it. */
  fitted: number;
  onTap: (facts: CavityFacts | null, at: Point) => void;
  onMenu: (facts: CavityFacts | null, at: BoardPointer) => void;
  onKey: (facts: CavityFacts, event: KeyboardEvent) => void;
}

/** What stands beside the mating face of the plug. */
type Beside = "wires" | "other";

/** The mating face of a plug beside its wires, or beside the half it plugs into: the same cavity lights in both. */
export function FaceHalves({ plug, fitted, onTap, onMenu, onKey }: FaceHalvesProps) {
  const session = useSession();
  const [beside, setBeside] = useState<Beside>("wires");
  const asks = useSelected(({ draft, operate }) =>
    draft ? draft.asks : operate.on ? operate.leads.asks : null,
  );
  // No lead is put into the other half: what is measured there is not the harness at hand.
  const choose = (facts: CavityFacts | null) =>
    session.show({ selection: facts ? [facts.ref] : [] });
  const own = { plug, onTap, onMenu, onKey };
  return (
    <div className={styles.halves}>
      <div className={styles.bar} role="toolbar" aria-label="Beside the mating face">
        <Button aria-pressed={beside === "wires"} onClick={() => setBeside("wires")}>
          Its wires
        </Button>
        <Button aria-pressed={beside === "other"} onClick={() => setBeside("other")}>
          The other half
        </Button>
        {asks && <span className={styles.says}>Touch the cavity of the {asks} lead</span>}
      </div>
      <div className={styles.room}>
        <div className={styles.panes}>
          <Pane
            key={`mating ${fitted}`}
            words={
              <>
                You look into the <strong>mating face</strong> of {plug.id}
              </>
            }
          >
            {(framing) => <FaceCanvas {...own} {...framing} {...STILL} side="mating" />}
          </Pane>
          {beside === "wires" ? (
            <Pane
              key={`wires ${fitted}`}
              words={
                <>
                  You look at the <strong>wires</strong> of the same half
                </>
              }
            >
              {(framing) => <FaceCanvas {...own} {...framing} {...STILL} side="wire" />}
            </Pane>
          ) : (
            <Pane
              key={`other ${fitted}`}
              words={
                <>
                  Mating face of the <strong>other half</strong>: mirrored
                </>
              }
            >
              {(framing) => (
                <FaceCanvas
                  plug={plug}
                  {...framing}
                  {...STILL}
                  side="wire"
                  otherHalf
                  onTap={choose}
                  onMenu={choose}
                  onKey={() => {}}
                />
              )}
            </Pane>
          )}
        </div>
      </div>
      {plug.neutral && <p className={styles.neutral}>{NEUTRAL_PLACES_NOTE}</p>}
    </div>
  );
}

/** Nothing is moved while two views stand together. */
const STILL = { arranging: false, onMove: () => {} } as const;

interface PaneProps {
  words: ReactNode;
  children: (framing: { framing: Framing; onCamera: (framing: Framing) => void }) => ReactNode;
}

/** One view under the words that say what is looked at, zoomed on its own. */
function Pane({ words, children }: PaneProps) {
  const [framing, setFraming] = useState<Framing>("close");
  return (
    <section className={styles.pane}>
      <h3 className={styles.words}>{words}</h3>
      <div className={styles.face}>{children({ framing, onCamera: setFraming })}</div>
    </section>
  );
}
