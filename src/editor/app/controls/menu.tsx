import { Check } from "lucide-react";
import { DropdownMenu } from "radix-ui";
import type { ReactNode } from "react";
import styles from "./menu.module.css";

interface MenuProps {
  /** The button that opens it. */
  button: ReactNode;
  align?: "start" | "end";
  children: ReactNode;
}

export function Menu({ button, align = "start", children }: MenuProps) {
  return (
    <DropdownMenu.Root modal={false}>
      <DropdownMenu.Trigger asChild>{button}</DropdownMenu.Trigger>
      <DropdownMenu.Portal>
        <DropdownMenu.Content
          className={styles.menu}
          align={align}
          sideOffset={6}
          collisionPadding={8}
        >
          {children}
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu.Root>
  );
}

interface ItemProps {
  children: ReactNode;
  icon?: ReactNode;
  /** The keys that do the same, shown at the end. */
  keys?: string;
  disabled?: boolean;
  onChoose: () => void;
}

export function MenuItem({ children, icon, keys, disabled = false, onChoose }: ItemProps) {
  return (
    <DropdownMenu.Item className={styles.item} disabled={disabled} onSelect={onChoose}>
      <span className={styles.icon}>{icon}</span>
      <span className={styles.text}>{children}</span>
      {keys && <kbd className={styles.keys}>{keys}</kbd>}
    </DropdownMenu.Item>
  );
}

interface ChoicesProps<T extends string> {
  label: string;
  value: T;
  choices: readonly { readonly value: T; readonly text: string }[];
  onChoose: (value: T) => void;
}

/** One of several, the chosen one ticked. */
export function MenuChoices<T extends string>({
  label,
  value,
  choices,
  onChoose,
}: ChoicesProps<T>) {
  return (
    <DropdownMenu.RadioGroup
      aria-label={label}
      value={value}
      onValueChange={(next) => onChoose(next as T)}
    >
      {choices.map((choice) => (
        <DropdownMenu.RadioItem key={choice.value} className={styles.item} value={choice.value}>
          <span className={styles.icon}>
            <DropdownMenu.ItemIndicator>
              <Check aria-hidden size={20} />
            </DropdownMenu.ItemIndicator>
          </span>
          <span className={styles.text}>{choice.text}</span>
        </DropdownMenu.RadioItem>
      ))}
    </DropdownMenu.RadioGroup>
  );
}

export const MenuHeading = ({ children }: { children: ReactNode }) => (
  <DropdownMenu.Label className={styles.heading}>{children}</DropdownMenu.Label>
);

export const MenuRule = () => <DropdownMenu.Separator className={styles.rule} />;
