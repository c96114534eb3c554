import { Crop } from "lucide-react";
import { useState } from "react";
import { SquareDesk } from "../../../scan-desk/square/index.ts";
import { useSelected } from "../../../session-context.tsx";
import { ScanButton } from "./scan-button.tsx";

/** Opens the desk where the picture is squared up. */
export function SquareButton() {
  const sheet = useSelected((state) => state.sheet);
  const [open, setOpen] = useState(false);
  return (
    <>
      <ScanButton
        icon={<Crop aria-hidden />}
        label="Square up"
        short="Square"
        tip="The corners of the page, its turn and its edges"
        onClick={() => setOpen(true)}
      />
      {open && sheet !== null && (
        <SquareDesk sheetId={sheet} start="square" onClose={() => setOpen(false)} />
      )}
    </>
  );
}
