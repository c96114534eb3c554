import {
  Check,
  CircleDashed,
  Eraser,
  Grid3x3,
  GripHorizontal,
  Redo2,
  Ruler,
  Undo2,
  X,
} from "lucide-react";
import type { ReactNode } from "react";
import { type Fill, MOST_IN_FILL } from "../../../plug/index.ts";
import { Button } from "../../app/controls/index.ts";
import { CountStepper } from "./count-stepper.tsx";
import { Choice } from "./fields.tsx";
import styles from "./photo-tools.module.css";
import {
  accepted,
  cancelled,
  dotsOf,
  type PhotoTool,
  type PhotoWork,
  redone,
  refilled,
  undone,
} from "./photo-work.ts";
import { GRID_RUNS, RING_TURNS } from "./plan-fields.tsx";

type Change = (change: (work: PhotoWork) => PhotoWork) => void;

const TOOLS: readonly {
  readonly tool: PhotoTool;
  readonly text: string;
  readonly icon: ReactNode;
}[] = [
  { tool: "row", text: "Row", icon: <GripHorizontal aria-hidden /> },
  { tool: "grid", text: "Grid", icon: <Grid3x3 aria-hidden /> },
  { tool: "ring", text: "Ring", icon: <CircleDashed aria-hidden /> },
  { tool: "remove", text: "Remove", icon: <Eraser aria-hidden /> },
  { tool: "measure", text: "Length", icon: <Ruler aria-hidden /> },
];

const SAYS: Readonly<Record<PhotoTool, string>> = {
  row: "Press on the first cavity of a row and drag to its last. A tap puts in one.",
  grid: "Press on one corner cavity and drag to the one across. A tap puts in one.",
  ring: "Press in the middle of a ring and drag to its first cavity. A tap puts in one.",
  remove: "Tap the cavities that are to go.",
  measure: "Drag between two points whose distance you know, and give it in the fields.",
};

interface PhotoToolsProps {
  tool: PhotoTool;
  onTool: (tool: PhotoTool) => void;
  work: PhotoWork;
  onWork: Change;
  zoom: ReactNode;
}

/** Over the photo: what a drag does, the way back, and how large it is shown. */
export function PhotoTools({ tool, onTool, work, onWork, zoom }: PhotoToolsProps) {
  return (
    <div className={styles.tools} role="toolbar" aria-label="Putting in cavities">
      {TOOLS.map((one) => (
        <Button
          key={one.tool}
          icon={one.icon}
          aria-pressed={tool === one.tool}
          onClick={() => onTool(one.tool)}
        >
          {one.text}
        </Button>
      ))}
      <span className={styles.back}>
        <Button
          tone="quiet"
          icon={<Undo2 aria-hidden />}
          aria-label="Take the last step back"
          disabled={!work.pending && work.past.length === 0}
          onClick={() => onWork(undone)}
        />
        <Button
          tone="quiet"
          icon={<Redo2 aria-hidden />}
          aria-label="Do it again"
          disabled={work.pending !== null || work.future.length === 0}
          onClick={() => onWork(redone)}
        />
        {zoom}
      </span>
    </div>
  );
}

interface FillBarProps {
  tool: PhotoTool;
  work: PhotoWork;
  onWork: Change;
}

/** Under the photo: how many the drag just made puts in; else what a drag does. */
export function FillBar({ tool, work, onWork }: FillBarProps) {
  const { pending } = work;
  const count = dotsOf(work).length;
  return (
    <div className={styles.bar}>
      {pending ? (
        <>
          <FillFields fill={pending} onFill={(fill) => onWork((now) => refilled(now, fill))} />
          <span className={styles.answer}>
            <Button icon={<Check aria-hidden />} onClick={() => onWork(accepted)}>
              Put them in
            </Button>
            <Button
              tone="quiet"
              icon={<X aria-hidden />}
              aria-label="Not these"
              onClick={() => onWork(cancelled)}
            />
          </span>
        </>
      ) : (
        <p>{SAYS[tool]}</p>
      )}
      <p className={styles.count} role="status">
        {count === 1 ? "1 cavity" : `${count} cavities`}
      </p>
    </div>
  );
}

function FillFields({ fill, onFill }: { fill: Fill; onFill: (fill: Fill) => void }) {
  switch (fill.shape) {
    case "row":
      return (
        <CountStepper
          label="In the row"
          value={fill.count}
          most={MOST_IN_FILL}
          onChange={(count) => onFill({ ...fill, count })}
        />
      );
    case "grid":
      return (
        <>
          <CountStepper
            label="Rows"
            value={fill.rows}
            most={MOST_IN_FILL}
            onChange={(rows) => onFill({ ...fill, rows })}
          />
          <CountStepper
            label="Columns"
            value={fill.columns}
            most={MOST_IN_FILL}
            onChange={(columns) => onFill({ ...fill, columns })}
          />
          <Choice
            label="Marks run"
            value={fill.run}
            options={GRID_RUNS}
            onChange={(run) => onFill({ ...fill, run })}
          />
        </>
      );
    case "ring":
      return (
        <>
          <CountStepper
            label="In the ring"
            value={fill.count}
            most={MOST_IN_FILL}
            onChange={(count) => onFill({ ...fill, count })}
          />
          <Choice
            label="Marks run"
            value={fill.turn}
            options={RING_TURNS}
            onChange={(turn) => onFill({ ...fill, turn })}
          />
        </>
      );
  }
}
