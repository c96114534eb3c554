import { Popover } from "radix-ui";
import { type ReactElement, type ReactNode, useRef, useState } from "react";
import styles from "./choice-popover.module.css";

interface ChoicePopoverProps {
  /** Name of what opens. */
  name: string;
  /** The button that opens it. */
  button: ReactElement;
  align?: "start" | "end";
  /** What opens; made only then. */
  children: (close: () => void) => ReactNode;
}

/** A list that lies over the page while something is chosen from it. */
export function ChoicePopover({ name, button, align = "start", children }: ChoicePopoverProps) {
  const [open, setOpen] = useState(false);
  const content = useRef<HTMLDivElement>(null);
  return (
    <Popover.Root open={open} onOpenChange={setOpen}>
      <Popover.Trigger asChild>{button}</Popover.Trigger>
      {open && (
        <Popover.Portal>
          <Popover.Content
            ref={content}
            data-portal
            className={styles.popover}
            align={align}
            collisionPadding={8}
            aria-label={name}
            onOpenAutoFocus={(event) => {
              if (!matchMedia("(pointer: coarse)").matches) return;
              // On a screen that is touched, the keyboard would hide the list that it is to narrow.
              event.preventDefault();
              content.current?.focus();
            }}
          >
            {children(() => setOpen(false))}
          </Popover.Content>
        </Popover.Portal>
      )}
    </Popover.Root>
  );
}
