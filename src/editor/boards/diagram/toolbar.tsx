import {
  Hand,
  Maximize,
  MousePointer2,
  Palette,
  Slash,
  Spline,
  ZoomIn,
  ZoomOut,
} from "lucide-react";
import type { ReactNode } from "react";
import { type Command, commandNamed } from "../../../session/index.ts";
import { CommandButton, keysOf } from "../../app/command-button.tsx";
import { Button, Tip } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { useBoard, useBoardState } from "./board-context.tsx";
import { PartPalette } from "./part-palette.tsx";
import { ScanToggle } from "./scan/scan-toggle.tsx";
import styles from "./toolbar.module.css";

/** What the pointer does, the parts to lay down, and how the sheet is looked at. */
export function Toolbar() {
  const board = useBoard();
  const colours = useBoardState((state) => state.colours);
  const tool = useSelected((state) => state.tool);
  const name = tool.name === "wire" && tool.free ? "free-wire" : tool.name;
  return (
    <div className={styles.bar} role="toolbar" aria-label="Diagram tools">
      <ToolButton
        id="select-tool"
        pressed={name === "select"}
        icon={<MousePointer2 aria-hidden />}
      />
      <ToolButton id="pan-tool" pressed={name === "pan"} icon={<Hand aria-hidden />} />
      <ToolButton id="wire-tool" pressed={name === "wire"} icon={<Spline aria-hidden />} />
      <ToolButton id="free-wire-tool" pressed={name === "free-wire"} icon={<Slash aria-hidden />} />
      <PartPalette />
      <ScanToggle />
      <span className={styles.spring} />
      <Tip text="Wire colours">
        <Button
          tone="quiet"
          aria-label="Wire colours"
          aria-pressed={colours}
          icon={<Palette aria-hidden />}
          onClick={() => board.show({ colours: !colours })}
        />
      </Tip>
      <span className={styles.zoom}>
        <CommandButton command={commandNamed("zoom-out")} icon={<ZoomOut aria-hidden />} />
        <CommandButton command={commandNamed("zoom-in")} icon={<ZoomIn aria-hidden />} />
      </span>
      <CommandButton command={commandNamed("zoom-to-fit")} icon={<Maximize aria-hidden />} />
    </div>
  );
}

/** Unlike other commands a tool in hand stays pressable: it is shown pressed, never greyed. */
function ToolButton({ id, pressed, icon }: { id: string; pressed: boolean; icon: ReactNode }) {
  const session = useSession();
  const command: Command = commandNamed(id);
  const keys = keysOf(command);
  return (
    <Tip text={keys ? `${command.label} (${keys})` : command.label}>
      <Button
        tone="quiet"
        icon={icon}
        aria-label={command.label}
        aria-pressed={pressed}
        onClick={() => command.run(session)}
      />
    </Tip>
  );
}
