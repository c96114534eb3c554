import {
  AlignCenterHorizontal,
  AlignCenterVertical,
  ClipboardPaste,
  Copy,
  CopyPlus,
  Pencil,
  Plus,
  RotateCw,
  ScanSearch,
  Scissors,
  Spline,
  Trash2,
} from "lucide-react";
import { DropdownMenu } from "radix-ui";
import type { ReactNode } from "react";
import { ownerOf } from "../../../job/index.ts";
import { addModulePin, commandNamed, removeCorner } from "../../../session/index.ts";
import { keysOf } from "../../app/command-button.tsx";
import { MenuHeading, MenuItem, MenuRule } from "../../app/controls/index.ts";
import controls from "../../app/controls/menu.module.css";
import { useSelected, useSession } from "../../session-context.tsx";
import { useBoard, useBoardState } from "./board-context.tsx";
import styles from "./board-menu.module.css";

const SHORT: readonly (readonly [id: string, icon: ReactNode] | "rule")[] = [
  ["edit-words", <Pencil key="i" />],
  ["turn", <RotateCw key="i" />],
  ["align-middle", <AlignCenterVertical key="i" />],
  ["align-centre", <AlignCenterHorizontal key="i" />],
  ["straighten-wire", <Spline key="i" />],
  ["find-more-like", <ScanSearch key="i" />],
  "rule",
  ["copy", <Copy key="i" />],
  ["cut", <Scissors key="i" />],
  ["paste", <ClipboardPaste key="i" />],
  ["duplicate", <CopyPlus key="i" />],
  "rule",
  ["delete", <Trash2 key="i" />],
];

/** The short menu of what is chosen: by right click, long press, or Shift and F10. */
export function BoardMenu() {
  const board = useBoard();
  const session = useSession();
  const at = useBoardState((state) => state.menu);
  const selection = useSelected((state) => state.selection);
  if (!at) return null;
  const close = () => board.show({ menu: null });
  const title =
    selection.length === 0
      ? "Sheet"
      : selection.length === 1
        ? selection[0]
        : `${selection.length} things`;
  const able = SHORT.filter((entry) => entry === "rule" || commandNamed(entry[0]).canRun(session));
  return (
    <DropdownMenu.Root open modal={false} onOpenChange={(open) => !open && close()}>
      <DropdownMenu.Trigger asChild>
        <span className={styles.anchor} style={{ left: at[0], top: at[1] }} aria-hidden="true" />
      </DropdownMenu.Trigger>
      <DropdownMenu.Portal>
        <DropdownMenu.Content
          className={controls.menu}
          align="start"
          sideOffset={4}
          collisionPadding={8}
          aria-label={title}
          // The focus goes back to the board, or to the words that the menu has opened for editing.
          onCloseAutoFocus={(event) => event.preventDefault()}
        >
          <MenuHeading>{title}</MenuHeading>
          <OwnItems />
          {able.map((entry, index) => {
            if (entry === "rule") {
              const last = able[index + 1];
              // biome-ignore lint/suspicious/noArrayIndexKey: rules have no name of their own
              return last && last !== "rule" ? <MenuRule key={`rule${index}`} /> : null;
            }
            const command = commandNamed(entry[0]);
            return (
              <MenuItem
                key={command.id}
                icon={entry[1]}
                keys={keysOf(command)}
                onChoose={() => command.run(session)}
              >
                {command.label}
              </MenuItem>
            );
          })}
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu.Root>
  );
}

/** What only a place on the board can be asked for: a pin on this spot of an edge, this corner. */
function OwnItems() {
  const board = useBoard();
  const session = useSession();
  const spot = useBoardState((state) => state.menuSheet);
  const chosen = useSelected((state) => state.selection[0]);
  const scene = board.scene();
  if (!scene || chosen === undefined) return null;
  const part = scene.partById.get(ownerOf(chosen))?.part;
  if (part?.kind === "module") {
    const add = () => {
      let pin: string | null = null;
      session.edit(`Add a pin to ${part.id}`, (draft) => {
        pin = addModulePin(draft, part.id, spot);
      });
      if (pin === null) return;
      const ref = `${part.id}:${pin}`;
      session.show({ selection: [ref] });
      setTimeout(() => board.show({ editing: ref }), 0);
    };
    return (
      <MenuItem icon={<Plus />} onChoose={add}>
        Add a pin {spot ? "here" : ""}
      </MenuItem>
    );
  }
  const wire = scene.wireById.get(chosen);
  if (!wire || !spot) return null;
  const reach = board.reach(true);
  const corner = wire.points
    .slice(1, -1)
    .findIndex(([x, y]) => Math.hypot(x - spot[0], y - spot[1]) <= reach);
  if (corner < 0) return null;
  return (
    <MenuItem
      icon={<Spline />}
      onChoose={() =>
        board.commit(`Straighten ${chosen}`, (draft) => removeCorner(draft, chosen, corner))
      }
    >
      Take out this corner
    </MenuItem>
  );
}
