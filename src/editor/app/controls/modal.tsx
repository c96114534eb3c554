import { X } from "lucide-react";
import { Dialog } from "radix-ui";
import { type ReactNode, useRef } from "react";
import { focusDiagram, isFocusLost } from "../../lost-focus.ts";
import { Button } from "./button.tsx";
import styles from "./modal.module.css";

interface ModalProps {
  title: string;
  /** One sentence under the title; read out with it. */
  lead?: string;
  /** `desk` is as large as the window, edge to edge on a phone: its content takes up all of it. */
  width?: "narrow" | "middle" | "wide" | "full" | "desk";
  /** `top` for one that grows while the user types: it must not jump. */
  place?: "middle" | "top";
  onClose: () => void;
  children: ReactNode;
}

/** Something that lies over the boards until it is put away; Escape and the cross put it away. */
export function Modal({
  title,
  lead,
  width = "narrow",
  place = "middle",
  onClose,
  children,
}: ModalProps) {
  const opener = useRef<HTMLElement | null>(null);
  return (
    <Dialog.Root open onOpenChange={(open) => !open && onClose()}>
      <Dialog.Portal>
        <Dialog.Overlay className={styles.shade} />
        <Dialog.Content
          className={styles.modal}
          data-width={width}
          data-place={place}
          onOpenAutoFocus={(event) => {
            // To the field that the dialog is for, else to the dialog itself: never to its cross.
            event.preventDefault();
            const box = event.currentTarget as HTMLElement;
            opener.current = openerOf(document.activeElement);
            (box.querySelector<HTMLElement>("[data-first]") ?? box).focus();
          }}
          onCloseAutoFocus={(event) => {
            event.preventDefault();
            // What was done here may have moved the keys on already.
            if (!isFocusLost()) return;
            opener.current?.focus();
            if (isFocusLost()) focusDiagram();
          }}
          onEscapeKeyDown={(event) => {
            // A field that puts its old text back on Escape is one step nearer.
            const { target } = event;
            if (target instanceof Element && target.closest("[data-own-escape]"))
              event.preventDefault();
          }}
          {...(lead ? {} : { "aria-describedby": undefined })}
        >
          <header className={styles.head}>
            <Dialog.Title>{title}</Dialog.Title>
            <Dialog.Close asChild>
              <Button tone="quiet" icon={<X aria-hidden />} aria-label="Close" />
            </Dialog.Close>
          </header>
          {lead && <Dialog.Description className={styles.lead}>{lead}</Dialog.Description>}
          <div className={styles.body}>{children}</div>
        </Dialog.Content>
      </Dialog.Portal>
    </Dialog.Root>
  );
}

/** What had the keys; for an entry of a menu, which goes with its menu, the button that opened the menu. */
function openerOf(active: Element | null): HTMLElement | null {
  const opened = active?.closest('[role="menu"]')?.getAttribute("aria-labelledby");
  const opener = opened ? document.getElementById(opened) : active;
  return opener instanceof HTMLElement && opener !== document.body ? opener : null;
}
