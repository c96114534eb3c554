import { Crop, Sparkles } from "lucide-react";
import { type ComponentProps, useState } from "react";
import { SquareDesk } from "../../../scan-desk/square/index.ts";
import { useSelected } from "../../../session-context.tsx";
import { ScanButton } from "./scan-button.tsx";

/** Opens the desk where the picture is squared up. */
export const SquareButton = () => (
  <DeskButton
    start="square"
    icon={<Crop aria-hidden />}
    label="Square up"
    step="square"
    tip="The corners of the page, its turn and its edges"
  />
);

/** Opens the same desk where the picture is cleaned. */
export const CleanButton = () => (
  <DeskButton
    start="clean"
    icon={<Sparkles aria-hidden />}
    label="Clean"
    tip="Shadows, paper tone, specks and the other ink"
  />
);

type DeskButtonProps = Pick<ComponentProps<typeof SquareDesk>, "start"> &
  Omit<ComponentProps<typeof ScanButton>, "onClick">;

function DeskButton({ start, ...button }: DeskButtonProps) {
  const sheet = useSelected((state) => state.sheet);
  const [open, setOpen] = useState(false);
  return (
    <>
      <ScanButton {...button} onClick={() => setOpen(true)} />
      {open && sheet !== null && (
        <SquareDesk sheetId={sheet} start={start} onClose={() => setOpen(false)} />
      )}
    </>
  );
}
