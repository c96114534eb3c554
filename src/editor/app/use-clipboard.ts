import { useEffect } from "react";
import type { Command } from "../../session/index.ts";
import { useSession } from "../session-context.tsx";
import { isTyping } from "./use-keyboard.ts";

/** Marks the clipboard as holding parts of a diagram, which the session itself keeps. */
const PARTS_MARK = "pintruth parts";

/**
 * Copy, cut and paste by the browser's own events, which alone may touch the clipboard: a picture
 * on it is brought in, else the parts copied last are laid down again.
 */
export function useClipboard(
  commands: readonly Command[],
  onFiles: (files: readonly File[]) => void,
): void {
  const session = useSession();
  useEffect(() => {
    const run = (id: string): boolean => {
      const command = commands.find((one) => one.id === id);
      if (!command?.canRun(session)) return false;
      command.run(session);
      return true;
    };
    const take = (id: string) => (event: ClipboardEvent) => {
      if (isTyping(event.target) || getSelection()?.toString()) return;
      if (!run(id)) return;
      event.clipboardData?.setData("text/plain", PARTS_MARK);
      event.preventDefault();
    };
    const copy = take("copy");
    const cut = take("cut");
    const paste = (event: ClipboardEvent) => {
      if (isTyping(event.target)) return;
      const files = [...(event.clipboardData?.files ?? [])];
      if (files.length > 0) onFiles(files);
      else if (!run("paste")) return;
      event.preventDefault();
    };
    addEventListener("copy", copy);
    addEventListener("cut", cut);
    addEventListener("paste", paste);
    return () => {
      removeEventListener("copy", copy);
      removeEventListener("cut", cut);
      removeEventListener("paste", paste);
    };
  }, [commands, onFiles, session]);
}
