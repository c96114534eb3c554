import { TriangleAlert } from "lucide-react";
import type { When } from "../../../job/index.ts";
import { cautionsFor } from "../../../readings/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import styles from "./operate-panel.module.css";

const AT_REST: When = {};
const ALWAYS = cautionsFor({ quantity: "volts", when: AT_REST });

/** What to mind on the real machine in the state that the drawing is in, besides what is always so. */
function useCautionsNow(): readonly string[] {
  const when = useSelected((state) => state.operate.live?.when ?? AT_REST);
  return cautionsFor({ quantity: "volts", when }).filter((one) => !ALWAYS.includes(one));
}

/** That this is no machine, and what to mind on the real one in the state that the drawing is in. */
export function Safety() {
  const now = useCautionsNow();
  return (
    <div className={styles.safety}>
      <TriangleAlert aria-hidden />
      <div>
        <p>
          {WHOLE} <AllCautions />
        </p>
        {now.map((one) => (
          <p key={one}>{one}</p>
        ))}
      </div>
    </div>
  );
}

/** The same where there is little room: one line, which opens. */
export function BriefSafety() {
  const now = useCautionsNow();
  return (
    <details className={styles.briefSafety}>
      <summary>
        <TriangleAlert aria-hidden />
        <span>
          {now.length === 0 ? (
            "This is the drawing, not the machine: secure the real one."
          ) : (
            <>
              Drawing, not the machine.{" "}
              <strong>
                {now.length === 1 ? "A caution" : `${now.length} cautions`} for this state
              </strong>
            </>
          )}
        </span>
      </summary>
      {now.map((one) => (
        <p key={one}>{one}</p>
      ))}
      <p>
        {WHOLE} <AllCautions />
      </p>
    </details>
  );
}

const WHOLE =
  "This is the drawing, not the machine, and the drawing may be wrong. Before you do the same on the real one: secure it, keep people clear.";

function AllCautions() {
  const session = useSession();
  return (
    <button
      type="button"
      className={styles.link}
      onClick={() => session.show({ dialog: "cautions" })}
    >
      All cautions
    </button>
  );
}
