import type { ReactNode } from "react";
import { type Command, chordText } from "../../session/index.ts";
import { useSelected, useSession } from "../session-context.tsx";
import { Button, Tip } from "./controls/index.ts";

interface CommandButtonProps {
  command: Command;
  icon: ReactNode;
  /** Shows the label beside the icon. */
  worded?: boolean;
  tone?: "primary" | "plain" | "quiet";
}

const isMac = () => /Mac|iPhone|iPad/.test(navigator.platform);

export const keysOf = (command: Command): string | undefined => {
  const [chord] = command.keys ?? [];
  return chord && chordText(chord, isMac());
};

/** A command of the list as a button: named, with its keys, greyed while it cannot run. */
export function CommandButton({ command, icon, worded, tone = "quiet" }: CommandButtonProps) {
  const session = useSession();
  // Whether a command can run may hang on anything in the state.
  useSelected((state) => state);
  const detail = command.detail?.(session);
  const name = detail ? `${command.label}: ${detail}` : command.label;
  const keys = keysOf(command);
  return (
    <Tip text={keys ? `${name} (${keys})` : name}>
      <Button
        tone={tone}
        icon={icon}
        aria-label={name}
        disabled={!command.canRun(session)}
        onClick={() => command.run(session)}
      >
        {worded ? command.label : undefined}
      </Button>
    </Tip>
  );
}
