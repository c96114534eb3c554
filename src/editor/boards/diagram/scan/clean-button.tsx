import { Sparkles } from "lucide-react";
import { useState } from "react";
import { SquareDesk } from "../../../scan-desk/square/index.ts";
import { useSelected } from "../../../session-context.tsx";
import { ScanButton } from "./scan-button.tsx";

/** Opens the desk where the picture is cleaned. */
export function CleanButton() {
  const sheet = useSelected((state) => state.sheet);
  const [open, setOpen] = useState(false);
  return (
    <>
      <ScanButton
        icon={<Sparkles aria-hidden />}
        label="Clean"
        short="Clean"
        tip="Shadows, paper tone, specks and the other ink"
        onClick={() => setOpen(true)}
      />
      {open && sheet !== null && (
        <SquareDesk sheetId={sheet} start="clean" onClose={() => setOpen(false)} />
      )}
    </>
  );
}
