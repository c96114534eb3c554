import { useEffect } from "react";
import { type Command, commandFor } from "../../session/index.ts";
import { useSession } from "../session-context.tsx";

/** True where keys are text: the browser's own undo, copy and letters belong there. */
export function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target.isContentEditable) return true;
  if (target instanceof HTMLInputElement)
    return !/^(button|checkbox|radio|range)$/.test(target.type);
  return target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement;
}

/** Things open over the boards answer keys by themselves. */
const inOverlay = (target: EventTarget | null) =>
  target instanceof Element &&
  target.closest('[role="dialog"],[role="alertdialog"],[role="menu"],[role="listbox"]') !== null;

const CLIPBOARD = ["copy", "cut", "paste"];

/** Runs the commands of the list from the keyboard. */
export function useKeyboard(commands: readonly Command[]): void {
  const session = useSession();
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.isComposing) return;
      const busy = isTyping(event.target) || inOverlay(event.target);
      const usable = busy ? commands.filter((command) => command.whileTyping) : commands;
      // These run from the browser's own events (see use-clipboard.ts).
      const command = commandFor(
        usable.filter((one) => !CLIPBOARD.includes(one.id)),
        event,
        session,
      );
      if (!command) return;
      // A sign such as "/" is text while typing.
      if (busy && !event.ctrlKey && !event.metaKey && event.key.length === 1) return;
      // Arrow keys and Enter on a focused control are that control's own.
      if (isControl(event.target) && /^(Enter| |Arrow.*)$/.test(event.key)) return;
      event.preventDefault();
      command.run(session);
    };
    addEventListener("keydown", press);
    return () => removeEventListener("keydown", press);
  }, [commands, session]);
}

const isControl = (target: EventTarget | null) =>
  target instanceof Element &&
  target.closest(
    "button,a[href],summary,[role=tab],[role=row],[role=gridcell],[role=separator]",
  ) !== null;
