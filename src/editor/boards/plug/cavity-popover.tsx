import { X } from "lucide-react";
import { Popover } from "radix-ui";
import type { CavityRef } from "../../../job/index.ts";
import { Button } from "../../app/controls/index.ts";
import { CavityDetails } from "./cavity-details.tsx";
import styles from "./cavity-popover.module.css";
import type { BoardPointer } from "./use-face-gestures.ts";

interface CavityPopoverProps {
  cavity: CavityRef;
  at: BoardPointer;
  onClose: () => void;
}

/** The details of a cavity beside it, for when the panel that shows them is not in view. */
export function CavityPopover({ cavity, at, onClose }: CavityPopoverProps) {
  return (
    <Popover.Root open onOpenChange={(open) => !open && onClose()}>
      <Popover.Anchor asChild>
        <span
          className={styles.anchor}
          style={{ left: at.clientX, top: at.clientY }}
          aria-hidden="true"
        />
      </Popover.Anchor>
      <Popover.Portal>
        <Popover.Content
          className={styles.popover}
          // Beside the cavity it has the whole height of the window, which a phone's width rules out.
          side={matchMedia("(min-width: 800px)").matches ? "right" : "bottom"}
          align="start"
          sideOffset={32}
          collisionPadding={8}
          aria-label="Wire and pin of the cavity"
        >
          <CavityDetails cavity={cavity} />
          <Popover.Close asChild>
            <Button
              className={styles.close}
              tone="quiet"
              icon={<X aria-hidden />}
              aria-label="Close"
            />
          </Popover.Close>
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  );
}
