import { stopped } from "../play/index.ts";
import type { Session } from "../session.ts";
import type { DialogName } from "../state.ts";
import type { Command } from "./command.ts";

const opens = (
  dialog: DialogName,
  label: string,
  rest: Pick<Command, "keys" | "whileTyping"> = {},
): Command => ({
  id: `show-${dialog}`,
  label,
  ...rest,
  canRun: (session) => session.get().dialog !== dialog,
  run: (session) => session.show({ dialog }),
});

/** What Escape would put away, the topmost thing first; null when there is nothing left to. */
function oneStepBack(session: Session): Parameters<Session["show"]>[0] | null {
  const { dialog, draft, operate, tool, selection, notice } = session.get();
  if (dialog) return { dialog: null };
  if (draft) return { draft: null };
  if (tool.name !== "select") return { tool: { name: "select" } };
  if (operate.on && operate.leads.asks) {
    return { operate: { ...operate, leads: { ...operate.leads, asks: null } } };
  }
  if (selection.length > 0) return { selection: [] };
  if (operate.on) return { operate: stopped(operate) };
  if (notice) return { notice: null };
  return null;
}

export const VIEW_COMMANDS: readonly Command[] = [
  {
    id: "back",
    label: "Back out one step",
    keys: ["Escape"],
    canRun: (session) => oneStepBack(session) !== null,
    run: (session) => {
      const change = oneStepBack(session);
      if (change) session.show(change);
    },
  },
  opens("find", "Find", { keys: ["Mod+F", "/"], whileTyping: true }),
  opens("jobs", "Jobs"),
  opens("machines", "Machines"),
  opens("compare", "Compare machines", { keys: ["C"] }),
  opens("sheet", "Make the sheet", { keys: ["Mod+P"], whileTyping: true }),
  opens("cautions", "Before you measure"),
  opens("keys", "Keys", { keys: ["?"] }),
  {
    id: "toggle-matches",
    label: "Show matches",
    keys: ["M"],
    canRun: (session) => session.get().job.links.length > 0,
    run: (session) => session.show({ showMatches: !session.get().showMatches }),
  },
  {
    id: "flip-plug",
    label: "Look from the other side",
    keys: ["X"],
    canRun: (session) => session.get().plug !== null,
    run: (session) => session.show({ side: session.get().side === "mating" ? "wire" : "mating" }),
  },
];
