import { Download, Printer, Sheet as SheetIcon } from "lucide-react";
import { useState } from "react";
import type { PaperSize } from "../../sheet/index.ts";
import { LabelledField } from "../app/commit-field.tsx";
import { Button, FileLink, Modal } from "../app/controls/index.ts";
import { fileNameFor } from "../app/file-transfer.ts";
import { useSelected } from "../session-context.tsx";
import { localTime } from "./local-time.ts";
import { PlugChoice } from "./plug-choice.tsx";
import { printPdf } from "./print-pdf.ts";
import { Segments } from "./segments.tsx";
import styles from "./sheet-dialog.module.css";
import { SheetPreview } from "./sheet-preview.tsx";
import { useSheet } from "./use-sheet.ts";
import { useSheetChoices } from "./use-sheet-choices.ts";

const SIDES = [
  { value: "wire", text: "wire side" },
  { value: "mating", text: "mating side" },
] as const;

const SIZES: readonly { value: PaperSize; text: string }[] = [
  { value: "A4", text: "A4" },
  { value: "Letter", text: "Letter" },
];

/** The corrected pinout sheet: seen before it is printed or saved. */
export function SheetDialog({ onClose }: { onClose: () => void }) {
  const plugs = useSelected((state) => state.job.plugs);
  const shownPlug = useSelected((state) => state.plug);
  const shownSide = useSelected((state) => state.side);
  const [plug, setPlug] = useState(shownPlug ?? plugs[0]?.id ?? "");
  const [side, setSide] = useState(shownSide);
  const [choices, choose] = useSheetChoices();
  // The day it is made: opening the dialog, not midnight, decides.
  const [date] = useState(() => localTime(new Date()));
  // Until the reader has drawn it too, the page is not there for whoever waits.
  const [drawn, setDrawn] = useState<Uint8Array | null>(null);
  const { model, hasPlug, sheet, shown } = useSheet({ plug, side, date, ...choices });

  if (hasPlug && !model) {
    return (
      <Modal title="Corrected pinout sheet" width="wide" onClose={onClose}>
        <p role="status">Working out what the sheet says…</p>
      </Modal>
    );
  }
  if (!model) {
    return (
      <Modal title="Sheet" onClose={onClose}>
        <p>Draw the plug first: the sheet shows its face and what each cavity is.</p>
      </Modal>
    );
  }
  const name = (ending: string) =>
    fileNameFor(`${model.machine.name} ${plug} pinout ${choices.revision}`, ending);
  const files = sheet.state === "set" ? sheet.files : null;
  const isReady = sheet.state === "failed" || (files !== null && files.pdf === drawn);
  return (
    <Modal title="Corrected pinout sheet" lead={model.standing} width="wide" onClose={onClose}>
      <div className={styles.dialog}>
        <div className={styles.choices}>
          <PlugChoice className={styles.field} plug={plug} onPlug={setPlug} />
          <Segments label="Seen from the" value={side} options={SIDES} onChange={setSide} />
          <Segments
            label="Paper"
            value={choices.size}
            options={SIZES}
            onChange={(size) => choose({ size })}
          />
          <LabelledField
            label="Revision"
            className={styles.field}
            value={choices.revision}
            onCommit={(revision) => choose({ revision })}
          />
          <LabelledField
            label="Prepared by"
            className={styles.field}
            value={choices.preparedBy}
            mayBeEmpty
            onCommit={(preparedBy) => choose({ preparedBy })}
          />
          <FileLink
            href={files?.pdfUrl}
            name={name(".pdf")}
            tone="primary"
            icon={<Download aria-hidden />}
          >
            Save PDF
          </FileLink>
          <Button
            icon={<Printer aria-hidden />}
            disabled={!files}
            onClick={() => files && printPdf(files.pdfUrl)}
          >
            Print
          </Button>
          <FileLink href={files?.csvUrl} name={name(".csv")} icon={<SheetIcon aria-hidden />}>
            Save table (CSV)
          </FileLink>
        </div>
        <section
          className={styles.preview}
          aria-label="Preview"
          aria-busy={!isReady}
          data-paper={choices.size}
        >
          <p role="status">{isReady ? "" : "Setting the sheet…"}</p>
          {sheet.state === "failed" && (
            <p role="alert">The page could not be made: {sheet.message}.</p>
          )}
          {shown && <SheetPreview pdf={shown} label={model.heading} onDrawn={setDrawn} />}
        </section>
      </div>
    </Modal>
  );
}
