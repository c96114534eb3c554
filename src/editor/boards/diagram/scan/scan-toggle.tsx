import { ScanLine } from "lucide-react";
import { commandNamed } from "../../../../session/index.ts";
import { keysOf } from "../../../app/command-button.tsx";
import { Button, Tip } from "../../../app/controls/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import { useHasPicture } from "./use-has-picture.ts";

/** In the toolbar of a sheet with a picture: shows and hides the bar of what can be done with it. */
export function ScanToggle() {
  const session = useSession();
  const open = useSelected((state) => state.scanDesk);
  const pictured = useHasPicture();
  const command = commandNamed("scan-desk");
  if (!pictured) return null;
  return (
    <Tip text={`${command.label}: square up, clean, follow lines (${keysOf(command)})`}>
      <Button
        tone="quiet"
        icon={<ScanLine aria-hidden />}
        aria-label={command.label}
        aria-pressed={open}
        onClick={() => command.run(session)}
      />
    </Tip>
  );
}
