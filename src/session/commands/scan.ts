import { pictureFileOf } from "../scan/picture-file.ts";
import type { Session } from "../session.ts";
import type { Command } from "./command.ts";

/** Whether the sheet at hand has a picture to work on. */
export const hasPicture = (session: Session): boolean => pictureFileOf(session.get()) !== null;

const isFollowing = (session: Session) => session.get().tool.name === "follow";

export const SCAN_COMMANDS: readonly Command[] = [
  {
    id: "scan-desk",
    label: "Scan desk",
    keys: ["D"],
    canRun: (session) => session.get().scanDesk || hasPicture(session),
    run: (session) => {
      const { scanDesk, tool } = session.get();
      // What only the bar can show is put away with it.
      const change =
        scanDesk && tool.name === "follow" ? { tool: { name: "select" } as const } : {};
      session.show({ scanDesk: !scanDesk, ...change });
    },
  },
  {
    id: "follow-tool",
    label: "Follow a line",
    keys: ["G"],
    canRun: (session) => hasPicture(session) && !isFollowing(session),
    run: (session) => session.show({ tool: { name: "follow" }, scanDesk: true }),
  },
];
