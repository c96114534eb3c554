import { Undo2 } from "lucide-react";
import { bringBack } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import styles from "./news.module.css";

/** Steps that gave way to others and are not lost yet: brought back at one touch. */
export function PutAside() {
  const session = useSession();
  const count = useSelected((state) => state.operate.setAside.length);
  if (count === 0) return null;
  return (
    <p className={styles.aside}>
      <span>
        {count === 1 ? "One step is" : `${count} steps are`} put aside, until you do another.
      </span>
      <Button icon={<Undo2 aria-hidden />} onClick={() => bringBack(session)}>
        Bring back the steps
      </Button>
    </p>
  );
}
