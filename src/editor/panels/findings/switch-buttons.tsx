import { ToggleLeft } from "lucide-react";
import type { Finding } from "../../../check/index.ts";
import { drawnOf, switchesInDoubt } from "../../../session/index.ts";
import { askWhatWorks } from "../../app/ask-what-works.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import styles from "./correction-buttons.module.css";

/** A button for each switch on an open pin's line that leads to where it is said what works it. */
export function SwitchButtons({ finding }: { finding: Finding }) {
  const session = useSession();
  const ids = useSelected((state) => switchesInDoubt(drawnOf(state), finding).join(" "));
  if (ids === "") return null;
  return (
    <div className={styles.buttons}>
      {ids.split(" ").map((id) => (
        <Button
          key={id}
          icon={<ToggleLeft aria-hidden />}
          onClick={() => askWhatWorks(session, id)}
        >
          Say what works {id}
        </Button>
      ))}
    </div>
  );
}
