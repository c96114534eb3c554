import { TriangleAlert } from "lucide-react";
import type { When } from "../../../job/index.ts";
import { cautionsFor } from "../../../readings/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import styles from "./operate-panel.module.css";

const AT_REST: When = {};
const ALWAYS = cautionsFor({ quantity: "volts", when: AT_REST });

/** That this is no machine, in few words where there is little room, and what to mind on the real one in the state that the drawing is in. */
export function Safety({ brief }: { brief: boolean }) {
  const session = useSession();
  const when = useSelected((state) => state.operate.live?.when ?? AT_REST);
  const now = cautionsFor({ quantity: "volts", when }).filter((one) => !ALWAYS.includes(one));
  return (
    <div className={styles.safety}>
      <TriangleAlert aria-hidden />
      <div>
        <p>
          {brief
            ? "This is the drawing, not the machine. Secure the real one, keep people clear."
            : "This is the drawing, not the machine, and the drawing may be wrong. Before you do the same on the real one: secure it, keep people clear."}{" "}
          <button
            type="button"
            className={styles.link}
            onClick={() => session.show({ dialog: "cautions" })}
          >
            All cautions
          </button>
        </p>
        {now.map((one) => (
          <p key={one}>{one}</p>
        ))}
      </div>
    </div>
  );
}
