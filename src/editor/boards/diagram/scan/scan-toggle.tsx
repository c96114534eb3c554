import { ScanLine } from "lucide-react";
import { commandNamed, pictureFileOf } from "../../../../session/index.ts";
import { keysOf } from "../../../app/command-button.tsx";
import { Button, Tip } from "../../../app/controls/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import styles from "../toolbar.module.css";

/** In the toolbar of a sheet with a picture: shows and hides the bar of what can be done with it. */
export function ScanToggle() {
  const session = useSession();
  const open = useSelected((state) => state.scanDesk);
  const pictured = useSelected(pictureFileOf) !== null;
  const command = commandNamed("scan-desk");
  if (!pictured) return null;
  return (
    <Tip text={`${command.label}: square up, clean, follow lines (${keysOf(command)})`}>
      <Button
        tone="quiet"
        className={styles.scan}
        icon={<ScanLine aria-hidden />}
        aria-label={command.label}
        aria-pressed={open}
        onClick={() => command.run(session)}
      >
        <span className={styles.word}>{command.label}</span>
      </Button>
    </Tip>
  );
}
