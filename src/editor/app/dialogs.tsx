import type { Command } from "../../session/index.ts";
import { ChangesDialog, CompareDialog, SheetDialog } from "../panels/index.ts";
import { useSelected, useSession } from "../session-context.tsx";
import { CautionsDialog } from "./cautions-dialog.tsx";
import { FindDialog } from "./find-dialog.tsx";
import { JobsDialog } from "./jobs-dialog.tsx";
import { KeysDialog } from "./keys-dialog.tsx";
import { MachinesDialog } from "./machines-dialog.tsx";

/** Whatever lies over the boards, one at a time. */
export function Dialogs({ commands }: { commands: readonly Command[] }) {
  const session = useSession();
  const dialog = useSelected((state) => state.dialog);
  switch (dialog) {
    case "find":
      return <FindDialog />;
    case "jobs":
      return <JobsDialog />;
    case "machines":
      return <MachinesDialog />;
    case "compare":
      return <CompareDialog />;
    case "changes":
      return <ChangesDialog />;
    case "cautions":
      return <CautionsDialog />;
    case "keys":
      return <KeysDialog commands={commands} />;
    case "sheet":
      return <SheetDialog onClose={() => session.show({ dialog: null })} />;
    case null:
      return null;
  }
}
