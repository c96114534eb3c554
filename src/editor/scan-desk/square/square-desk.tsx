import { Redo2, Undo2 } from "lucide-react";
import { useEffect, useRef, useState } from "react";
import type { Id } from "../../../job/index.ts";
import { NOT_SQUARED, type Squaring } from "../../../scan/index.ts";
import {
  cleaningOf,
  hasParts,
  originalOf,
  rounded,
  squareUpSheet,
  squaringOf,
  squaringProblem,
} from "../../../session/index.ts";
import { Button, Modal } from "../../app/controls/index.ts";
import { Segments } from "../../panels/segments.tsx";
import { useSelected, useSession } from "../../session-context.tsx";
import { BeforeButton } from "./before-button.tsx";
import { type CleanForm, cleanFormOf, stepsOf } from "./clean-form.ts";
import { CleanPanel } from "./clean-panel.tsx";
import { CornerStage } from "./corner-stage.tsx";
import { DeskFoot } from "./desk-foot.tsx";
import { ResultStage, type ResultTool } from "./result-stage.tsx";
import styles from "./square-desk.module.css";
import { SquarePanel } from "./square-panel.tsx";
import { isNotSquared } from "./square-work.ts";
import { useCorners } from "./use-corners.ts";
import { useMaking } from "./use-making.ts";
import { type OpenedPicture, useSquarePort } from "./use-square-port.ts";
import { useStepKeys, useSteps } from "./use-steps.ts";

interface SquareDeskProps {
  sheetId: Id;
  /** What is wanted first; the other is one tap away. */
  start: "square" | "clean";
  onClose: () => void;
}

/** What a sheet's picture is made by. */
interface Work {
  readonly squaring: Squaring;
  readonly clean: CleanForm;
}

/** Squares a sheet's picture up and cleans it, from the picture as it came, which is always kept. */
export function SquareDesk({ sheetId, start, onClose }: SquareDeskProps) {
  const sheet = useSelected(
    (state) => state.job.diagram.sheets.find((one) => one.id === sheetId) ?? null,
  );
  const file = (sheet && originalOf(sheet))?.file ?? null;
  const { opened, problem } = useSquarePort(file);
  return (
    <Modal title="Square up and clean" width="desk" onClose={onClose}>
      {opened && file ? (
        <Desk key={file} {...{ sheetId, start, onClose, opened, file }} />
      ) : problem || !file ? (
        <p role="alert">{problem ?? "This sheet has no picture."}</p>
      ) : (
        <p role="status">Reading the picture…</p>
      )}
    </Modal>
  );
}

type SquareTool = "corners" | Exclude<ResultTool, "look">;

const TABS = [
  { value: "square", text: "Square up" },
  { value: "clean", text: "Clean" },
] as const;

const TOOLS: readonly { readonly value: SquareTool; readonly text: string }[] = [
  { value: "corners", text: "Corners" },
  { value: "level", text: "Level" },
  { value: "crop", text: "Crop" },
];

const SAYS: Readonly<Record<SquareTool, string>> = {
  corners: "Drag the corners to those of the page.",
  level: "Drag along something that should be level or upright.",
  crop: "Drag a box over what is to stay, or its corners.",
};

interface DeskProps extends SquareDeskProps {
  opened: OpenedPicture;
  file: string;
}

function Desk({ sheetId, start, onClose, opened: { port, size }, file }: DeskProps) {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const sheet = job.diagram.sheets.find((one) => one.id === sheetId);
  const work = useSteps<Work>(() => ({
    squaring: sheet ? squaringOf(sheet) : NOT_SQUARED,
    clean: cleanFormOf(sheet ? cleaningOf(sheet) : []),
  }));
  const [tab, setTab] = useState<"square" | "clean">(start);
  const [tool, setTool] = useState<SquareTool>("corners");
  const [isBefore, setBefore] = useState(false);
  const [zoomSlot, setZoomSlot] = useState<Element | null>(null);
  const { squaring, clean } = work.now;
  useStepKeys(work);
  const onSquaring = (change: (squaring: Squaring) => Squaring, intention?: string) =>
    work.set((now) => {
      const next = change(now.squaring);
      return next === now.squaring ? now : { ...now, squaring: next };
    }, intention);
  const corners = useCorners(port, size, squaring, onSquaring);
  const find = useRef(corners.find);
  const isNew = sheet?.original === undefined;
  // A picture that nobody has squared yet begins with what is found on it.
  useEffect(() => {
    if (start === "square" && isNew) void find.current();
  }, [start, isNew]);

  const made = rounded(squaring);
  const cleaning = stepsOf(clean);
  const kept = sheet && JSON.stringify([squaringOf(sheet), cleaningOf(sheet)]);
  const refused = squaringProblem(job, sheetId, made);
  const making = useMaking(port, file, sheetId, (image) => {
    squareUpSheet(session, sheetId, { squaring: made, cleaning, image });
    const text = image
      ? "The picture is squared up. The one that came is kept."
      : "The picture is the one that came.";
    session.show({ notice: { tone: "info", text } });
    onClose();
  });
  const isAsItCame = cleaning.length === 0 && isNotSquared(squaring);
  const isBusy = making.share !== null;
  return (
    <div className={styles.desk} data-tab={tab}>
      <div className={styles.tools} inert={isBusy}>
        <Segments label="What is done" bare value={tab} options={TABS} onChange={setTab} />
        {tab === "square" ? (
          <Segments label="Tool" bare value={tool} options={TOOLS} onChange={setTool} />
        ) : (
          <BeforeButton isBefore={isBefore} onBefore={setBefore} />
        )}
        <p className={styles.hint}>
          {tab === "square" ? SAYS[tool] : "Zoom in to see it at full resolution."}
          {tab === "square" && tool === "corners" && (
            <span className={styles.keys}> Arrow keys move the chosen one.</span>
          )}
        </p>
        <span className={styles.back}>
          <Button
            tone="quiet"
            icon={<Undo2 aria-hidden />}
            aria-label="Take the last step back"
            disabled={!work.undo}
            onClick={() => work.undo?.()}
          />
          <Button
            tone="quiet"
            icon={<Redo2 aria-hidden />}
            aria-label="Do it again"
            disabled={!work.redo}
            onClick={() => work.redo?.()}
          />
          <span ref={setZoomSlot} className={styles.zoom} />
        </span>
      </div>
      <div className={styles.stage} inert={isBusy}>
        {tab === "square" && tool === "corners" ? (
          <CornerStage
            port={port}
            zoomSlot={zoomSlot}
            size={size}
            squaring={squaring}
            onSquaring={onSquaring}
          />
        ) : (
          <ResultStage
            key={tab === "clean" ? "clean" : tool}
            port={port}
            zoomSlot={zoomSlot}
            size={size}
            squaring={made}
            cleaning={tab === "clean" && !isBefore ? cleaning : []}
            tool={tab === "clean" || tool === "corners" ? "look" : tool}
            onSquaring={onSquaring}
          />
        )}
      </div>
      <section className={styles.side} inert={isBusy} aria-label="Settings">
        {tab === "square" ? (
          <SquarePanel
            size={size}
            squaring={squaring}
            says={corners.says}
            bow={corners.bow}
            isLooking={corners.isLooking}
            isDrawn={hasParts(job, sheetId)}
            onSquaring={onSquaring}
            onFind={() => {
              setTool("corners");
              void corners.find();
            }}
          />
        ) : (
          <CleanPanel
            form={clean}
            onForm={(change, intention) =>
              work.set((now) => ({ ...now, clean: change(now.clean) }), intention)
            }
          />
        )}
      </section>
      <DeskFoot
        size={size}
        squaring={made}
        making={making}
        problem={refused ?? making.problem}
        mayUse={refused === null && kept !== JSON.stringify([made, cleaning])}
        onOriginal={
          isAsItCame
            ? null
            : () => work.set(() => ({ squaring: NOT_SQUARED, clean: cleanFormOf([]) }))
        }
        onUse={() => making.make(made, cleaning)}
        onClose={onClose}
      />
    </div>
  );
}
