import { Route } from "lucide-react";
import { commandNamed } from "../../../../session/index.ts";
import { keysOf } from "../../../app/command-button.tsx";
import { useSelected, useSession } from "../../../session-context.tsx";
import { ScanButton } from "./scan-button.tsx";

/** Takes up the tool that follows lines of the picture, and puts it down again. */
export function FollowButton() {
  const session = useSession();
  const following = useSelected((state) => state.tool.name === "follow");
  const command = commandNamed("follow-tool");
  return (
    <ScanButton
      icon={<Route aria-hidden />}
      label={command.label}
      tip={`Tap a pin or a line: all that it joins lights up (${keysOf(command)})`}
      pressed={following}
      onClick={() =>
        following ? session.show({ tool: { name: "select" } }) : command.run(session)
      }
    />
  );
}
