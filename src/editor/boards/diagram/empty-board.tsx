import { Camera, ClipboardPaste, FileImage, PencilRuler, Play } from "lucide-react";
import { useEffect } from "react";
import { addSheet } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useCamera, usePictureImport } from "../../import/index.ts";
import { focusDiagram, isFocusLost } from "../../lost-focus.ts";
import { useSession } from "../../session-context.tsx";
import styles from "./empty-board.module.css";

/** What the board shows before there is a sheet: how to bring one in, and the demo. */
export function EmptyBoard({ onOpenDemo }: { onOpenDemo: () => void }) {
  const session = useSession();
  const pictures = usePictureImport();
  const camera = useCamera(pictures.take);
  useEffect(
    () => () => {
      // The button that was pressed is gone with the offers.
      if (isFocusLost()) focusDiagram();
    },
    [],
  );
  const drawBlank = () => {
    let id = "";
    session.edit("Begin a sheet without a picture", (draft) => {
      id = addSheet(draft, {});
    });
    session.show({ sheet: id });
  };
  return (
    <div className={styles.empty}>
      <h2>Bring in the diagram</h2>
      <p>A photo, a scan or a page of a PDF. You trace only the circuit around the module.</p>
      <div className={styles.offers}>
        <Button tone="primary" icon={<Camera aria-hidden />} onClick={camera.ask}>
          Take a photo
        </Button>
        <Button icon={<FileImage aria-hidden />} onClick={pictures.pick}>
          Choose a file
        </Button>
        <Button icon={<ClipboardPaste aria-hidden />} onClick={pictures.paste}>
          Paste
        </Button>
        <Button icon={<PencilRuler aria-hidden />} onClick={drawBlank}>
          Draw without a picture
        </Button>
        <Button tone="quiet" icon={<Play aria-hidden />} onClick={onOpenDemo}>
          Look at the demo
        </Button>
      </div>
      {camera.input}
      {pictures.dialog}
    </div>
  );
}
