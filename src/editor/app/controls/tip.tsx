import { Tooltip } from "radix-ui";
import type { FocusEvent, ReactNode } from "react";
import styles from "./tip.module.css";

/** Focus that a closed dialog gives back asks for no words: only keys that come to an icon do. */
function onlyByKeys(event: FocusEvent) {
  if (!event.currentTarget.matches(":focus-visible")) event.preventDefault();
}

/** Says in words what an icon does, on hover and on focus. */
export function Tip({ text, children }: { text: string; children: ReactNode }) {
  return (
    <Tooltip.Root>
      <Tooltip.Trigger asChild onFocus={onlyByKeys}>
        {children}
      </Tooltip.Trigger>
      <Tooltip.Portal>
        <Tooltip.Content className={styles.tip} sideOffset={6} collisionPadding={8}>
          {text}
        </Tooltip.Content>
      </Tooltip.Portal>
    </Tooltip.Root>
  );
}

export const TipProvider = ({ children }: { children: ReactNode }) => (
  <Tooltip.Provider delayDuration={500}>{children}</Tooltip.Provider>
);
