import { Pipette } from "lucide-react";
import { useState } from "react";
import type { CavityRef } from "../../../job/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected } from "../../session-context.tsx";
import { PhotoColourDialog } from "./photo-colour-dialog.tsx";

/** Opens the photo to take the colour of the wire in one cavity from. */
export function PhotoColourButton({ plug: id, cavity }: { plug: string; cavity: CavityRef }) {
  const plug = useSelected((state) => state.job.plugs).find((one) => one.id === id);
  const [open, setOpen] = useState(false);
  if (!plug) return null;
  return (
    <>
      <Button icon={<Pipette aria-hidden />} onClick={() => setOpen(true)}>
        Wire colour from the photo
      </Button>
      {open && <PhotoColourDialog plug={plug} cavity={cavity} onClose={() => setOpen(false)} />}
    </>
  );
}
