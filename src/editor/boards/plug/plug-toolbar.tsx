import {
  Camera,
  Check,
  Columns2,
  Ellipsis,
  FlipHorizontal,
  ImageOff,
  LayoutGrid,
  Maximize,
  Move,
  Pipette,
  Plus,
  Scan,
  SquareDashed,
  Trash2,
} from "lucide-react";
import type { Plug } from "../../../job/index.ts";
import { plugTitle } from "../../../plug/index.ts";
import { commandNamed } from "../../../session/index.ts";
import { Button, Menu, MenuItem, MenuRule, Tip } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import styles from "./plug-toolbar.module.css";

export type PlugAct =
  | "draw"
  | "photo"
  | "change"
  | "on-photo"
  | "colours"
  | "remove-photo"
  | "confirm-places"
  | "arrange"
  | "rehouse"
  | "halves"
  | "delete"
  | "fit";

interface PlugToolbarProps {
  plug: Plug;
  plugs: readonly Plug[];
  arranging: boolean;
  adding: boolean;
  /** Whether two views of the plug stand together; then there is no one side to turn over. */
  halves: boolean;
  onAct: (act: PlugAct) => void;
  onAdding: (adding: boolean) => void;
}

export function PlugToolbar(props: PlugToolbarProps) {
  const { plug, plugs, arranging, adding, halves, onAct } = props;
  const session = useSession();
  const side = useSelected((state) => state.side);
  const operating = useSelected((state) => state.operate.on);
  const flip = commandNamed("flip-plug");
  return (
    <>
      <div className={styles.bar} role="toolbar" aria-label="Plug board">
        {plugs.length > 1 ? (
          <select
            className={styles.picker}
            aria-label="Plug"
            value={plug.id}
            onChange={(event) => {
              const next = plugs.find((one) => one.id === event.target.value);
              if (next) session.show({ plug: next.id, side: next.side });
            }}
          >
            {plugs.map((one) => (
              <option key={one.id} value={one.id}>
                {plugTitle(one)}
              </option>
            ))}
          </select>
        ) : (
          <h2 className={styles.name}>{plugTitle(plug)}</h2>
        )}
        <Tip text={`${flip.label} (${flip.keys?.[0] ?? ""})`}>
          <Button
            icon={<FlipHorizontal aria-hidden />}
            aria-label={`Turn over: now the ${side} side`}
            disabled={halves}
            onClick={() => flip.run(session)}
          >
            <span className={styles.side}>{side} side</span>
          </Button>
        </Tip>
        <Tip text="Two views side by side">
          <Button
            icon={<Columns2 aria-hidden />}
            aria-label="Two views side by side"
            aria-pressed={halves}
            onClick={() => onAct("halves")}
          />
        </Tip>
        <span className={styles.spring} />
        <Tip text="Show the whole face">
          <Button
            tone="quiet"
            icon={<Maximize aria-hidden />}
            aria-label="Show the whole face"
            onClick={() => onAct("fit")}
          />
        </Tip>
        <Menu
          align="end"
          button={
            <Button
              tone="quiet"
              icon={<Ellipsis aria-hidden />}
              aria-label="More for plugs"
              disabled={operating}
            />
          }
        >
          <MenuItem icon={<LayoutGrid />} onChoose={() => onAct("draw")}>
            Draw another plug
          </MenuItem>
          <MenuItem icon={<Camera />} onChoose={() => onAct("photo")}>
            Another plug from a photo
          </MenuItem>
          <MenuRule />
          <MenuItem icon={<Scan />} onChoose={() => onAct("change")}>
            Change the arrangement
          </MenuItem>
          <MenuItem icon={<Camera />} onChoose={() => onAct("on-photo")}>
            {plug.photo ? "Change it on its photo" : "Draw it anew over a photo"}
          </MenuItem>
          <MenuItem icon={<Pipette />} onChoose={() => onAct("colours")}>
            Wire colours from {plug.photo ? "the photo" : "a photo"}
          </MenuItem>
          {plug.photo && (
            <MenuItem icon={<ImageOff />} onChoose={() => onAct("remove-photo")}>
              Take the photo away
            </MenuItem>
          )}
          {plug.neutral && (
            <MenuItem icon={<Check />} onChoose={() => onAct("confirm-places")}>
              I held the drawing against the plug: positions are right
            </MenuItem>
          )}
          <MenuItem icon={<Move />} onChoose={() => onAct("arrange")}>
            {arranging ? "Stop moving cavities" : "Move, add and delete cavities"}
          </MenuItem>
          <MenuItem icon={<SquareDashed />} onChoose={() => onAct("rehouse")}>
            Draw the housing round the cavities
          </MenuItem>
          <MenuRule />
          <MenuItem icon={<Trash2 />} onChoose={() => onAct("delete")}>
            Delete plug {plug.id}
          </MenuItem>
        </Menu>
      </div>
      {arranging && (
        <div className={styles.arranging} role="toolbar" aria-label="Moving cavities">
          <Button
            icon={<Plus aria-hidden />}
            aria-pressed={adding}
            onClick={() => props.onAdding(!adding)}
          >
            Add cavities
          </Button>
          <span className={styles.spring} />
          <Button tone="primary" icon={<Check aria-hidden />} onClick={() => onAct("arrange")}>
            Done
          </Button>
        </div>
      )}
    </>
  );
}
