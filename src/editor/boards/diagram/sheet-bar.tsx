import { Ellipsis, FilePlus2, ImagePlus, Pencil, Trash2 } from "lucide-react";
import { useState } from "react";
import type { Sheet } from "../../../job/index.ts";
import { addSheet, removeSheet } from "../../../session/index.ts";
import { Button, Menu, MenuItem, Modal } from "../../app/controls/index.ts";
import { usePictureImport } from "../../import/index.ts";
import { SquareOffer } from "../../scan-desk/square/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { EditField } from "../plug/fields.tsx";
import styles from "./sheet-bar.module.css";

export const sheetTitle = (sheet: Sheet, index: number): string =>
  sheet.title ?? `Sheet ${index + 1}`;

/** The sheets of the diagram, and what can be done with the one at hand. */
export function SheetBar() {
  const session = useSession();
  const sheets = useSelected((state) => state.job.diagram.sheets);
  const chosen = useSelected((state) => state.sheet);
  const isScanning = useSelected((state) => state.scanDesk);
  const [asking, setAsking] = useState<"name" | "remove" | null>(null);
  const pictures = usePictureImport();
  const sheet = sheets.find((one) => one.id === chosen);
  if (sheets.length === 0) return <>{pictures.dialog}</>;
  const addBlank = () => {
    let id = "";
    session.edit("Add a sheet without a picture", (draft) => {
      id = addSheet(draft, {});
    });
    session.show({ sheet: id, selection: [] });
  };
  return (
    <div className={styles.bar} data-spared={isScanning && sheets.length === 1}>
      <div className={styles.tabs} role="tablist" aria-label="Sheets">
        {sheets.map((one, index) => (
          <button
            key={one.id}
            type="button"
            role="tab"
            className={styles.tab}
            aria-selected={one.id === chosen}
            onClick={() => session.show({ sheet: one.id, selection: [] })}
          >
            {sheetTitle(one, index)}
          </button>
        ))}
      </div>
      <SquareOffer />
      <Menu
        align="end"
        button={
          <Button tone="quiet" icon={<Ellipsis aria-hidden />} aria-label="More for sheets" />
        }
      >
        <MenuItem icon={<ImagePlus />} onChoose={pictures.pick}>
          Add a picture or a PDF page
        </MenuItem>
        <MenuItem icon={<FilePlus2 />} onChoose={addBlank}>
          Add a sheet without a picture
        </MenuItem>
        {sheet && (
          <>
            <MenuItem icon={<Pencil />} onChoose={() => setAsking("name")}>
              Rename this sheet
            </MenuItem>
            <MenuItem icon={<Trash2 />} onChoose={() => setAsking("remove")}>
              Remove this sheet
            </MenuItem>
          </>
        )}
      </Menu>
      {sheet && asking === "name" && (
        <Modal title="Rename this sheet" onClose={() => setAsking(null)}>
          <EditField
            label="Title"
            value={sheet.title ?? ""}
            onCommit={(text) => {
              session.edit("Rename a sheet", (draft) => {
                const written = draft.diagram.sheets.find((one) => one.id === sheet.id);
                if (!written) return;
                if (text === "") delete written.title;
                else written.title = text;
              });
              setAsking(null);
            }}
          />
        </Modal>
      )}
      {sheet && asking === "remove" && (
        <RemoveSheet sheet={sheet} onClose={() => setAsking(null)} />
      )}
      {pictures.dialog}
    </div>
  );
}

function RemoveSheet({ sheet, onClose }: { sheet: Sheet; onClose: () => void }) {
  const session = useSession();
  const sheets = useSelected((state) => state.job.diagram.sheets);
  const parts = useSelected((state) => state.job.diagram.parts);
  const count = parts.filter((part) => part.sheet === sheet.id).length;
  const title = sheetTitle(sheet, sheets.indexOf(sheet));
  const drawn =
    count === 0
      ? "Nothing is drawn on it."
      : `The ${count === 1 ? "part" : `${count} parts`} drawn on it and their wires go with it.`;
  const remove = () => {
    session.edit(`Remove ${title}`, (draft) => removeSheet(draft, sheet.id));
    session.show({ selection: [] });
    onClose();
  };
  return (
    <Modal
      title={`Remove ${title}?`}
      lead={`${drawn} Undo brings everything back.`}
      onClose={onClose}
    >
      <div className={styles.answers}>
        <Button tone="danger" icon={<Trash2 aria-hidden />} onClick={remove}>
          Remove
        </Button>
        <Button onClick={onClose}>Keep it</Button>
      </div>
    </Modal>
  );
}
