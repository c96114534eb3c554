import { Ban, Cable, CircleDashed, Pencil, Trash2, Unlink } from "lucide-react";
import { DropdownMenu } from "radix-ui";
import { MenuHeading, MenuItem, MenuRule } from "../../app/controls/index.ts";
import controls from "../../app/controls/menu.module.css";
import type { CavityFacts } from "./cavity-facts.ts";
import styles from "./cavity-menu.module.css";
import type { BoardPointer } from "./use-face-gestures.ts";

export type CavityAct = "describe" | "empty" | "blocked" | "plain" | "rename" | "untie" | "delete";

interface CavityMenuProps {
  facts: CavityFacts;
  at: BoardPointer;
  onAct: (act: CavityAct) => void;
  onClose: () => void;
}

/** What can be done with one cavity; opens where it was touched. */
export function CavityMenu({ facts, at, onAct, onClose }: CavityMenuProps) {
  const is = (state: CavityFacts["state"]) => facts.state === state;
  return (
    <DropdownMenu.Root open modal={false} onOpenChange={(open) => !open && onClose()}>
      <DropdownMenu.Trigger asChild>
        <span
          className={styles.anchor}
          style={{ left: at.clientX, top: at.clientY }}
          aria-hidden="true"
        />
      </DropdownMenu.Trigger>
      <DropdownMenu.Portal>
        <DropdownMenu.Content
          className={controls.menu}
          align="start"
          sideOffset={4}
          collisionPadding={8}
          aria-label={`Cavity ${facts.mark}`}
        >
          <MenuHeading>Cavity {facts.mark}</MenuHeading>
          <MenuItem icon={<Cable />} onChoose={() => onAct("describe")}>
            Describe its wire and pin
          </MenuItem>
          <MenuItem icon={<CircleDashed />} onChoose={() => onAct(is("empty") ? "plain" : "empty")}>
            {is("empty") ? "Has a terminal after all" : "Is empty"}
          </MenuItem>
          <MenuItem icon={<Ban />} onChoose={() => onAct(is("blocked") ? "plain" : "blocked")}>
            {is("blocked") ? "Is not blocked" : "Is blocked by a plug"}
          </MenuItem>
          {facts.pin !== null && (
            <MenuItem icon={<Unlink />} onChoose={() => onAct("untie")}>
              Untie from {facts.pin}
            </MenuItem>
          )}
          <MenuRule />
          <MenuItem icon={<Pencil />} keys="F2" onChoose={() => onAct("rename")}>
            Change its mark
          </MenuItem>
          <MenuItem icon={<Trash2 />} onChoose={() => onAct("delete")}>
            Delete the cavity
          </MenuItem>
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu.Root>
  );
}
