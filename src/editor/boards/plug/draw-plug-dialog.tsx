import { useState } from "react";
import type { Job, Plug } from "../../../job/index.ts";
import { faceOf } from "../../../plug/index.ts";
import { lossOfMarks } from "../../../session/index.ts";
import { Button, Modal } from "../../app/controls/index.ts";
import { useSelected } from "../../session-context.tsx";
import styles from "./draw-plug-dialog.module.css";
import { FacePreview } from "./face-preview.tsx";
import { PlanFields } from "./plan-fields.tsx";
import { EMPTY_FORM, formOf, type PlanForm, planOf } from "./plan-form.ts";

interface DrawPlugDialogProps {
  /** The plug to draw anew; null draws a new one. */
  plug: Plug | null;
  start?: PlanForm;
  onClose: () => void;
  onDraw: (drawn: Omit<Plug, "id">) => void;
}

/** Draws the face of a plug by its arrangement, with the result in view while the fields change. */
export function DrawPlugDialog({ plug, start, onClose, onDraw }: DrawPlugDialogProps) {
  const job = useSelected((state) => state.job);
  const [form, setForm] = useState(() => start ?? (plug ? formOf(plug) : EMPTY_FORM));
  const plan = planOf(form);
  const problem = "problem" in plan ? plan.problem : null;
  const drawn = "problem" in plan ? null : drawnPlug(form, faceOf(plan));
  return (
    <Modal
      title={plug ? `Change the arrangement of ${plug.id}` : "Draw a plug"}
      width="wide"
      onClose={onClose}
    >
      <form
        className={styles.form}
        onSubmit={(event) => {
          event.preventDefault();
          if (drawn) onDraw(drawn);
        }}
      >
        <div className={styles.fields}>
          <PlanFields form={form} onForm={setForm} />
        </div>
        <div className={styles.result}>
          <p className={styles.side}>
            Seen from the <strong>{form.side} side</strong>
          </p>
          <div className={styles.preview}>
            {drawn && (
              <FacePreview
                plug={drawn}
                side={drawn.side}
                label={`Preview: ${drawn.cavities.length} cavities, seen from the ${drawn.side} side`}
              />
            )}
          </div>
          <p className={styles.note} role="status">
            {problem ?? noteOn(job, plug, drawn, form.kind)}
          </p>
        </div>
        <div className={styles.submit}>
          <Button type="submit" tone="primary" disabled={drawn === null}>
            {plug ? "Change it" : "Draw it"}
          </Button>
        </div>
      </form>
    </Modal>
  );
}

function drawnPlug(form: PlanForm, face: ReturnType<typeof faceOf>): Omit<Plug, "id"> {
  const name = form.name.trim();
  return {
    side: form.side,
    ...face,
    ...(name === "" ? {} : { name }),
    ...(form.holds === "" ? {} : { holds: form.holds }),
  };
}

function noteOn(
  job: Job,
  plug: Plug | null,
  drawn: Omit<Plug, "id"> | null,
  kind: PlanForm["kind"],
): string {
  if (!drawn) return "";
  if (kind === "free") return "Click on the empty face to put in cavities one by one.";
  const count = `${drawn.cavities.length} ${drawn.cavities.length === 1 ? "cavity" : "cavities"}.`;
  const marks = drawn.cavities.map((cavity) => cavity.mark);
  const loss = plug ? lossOfMarks(job, plug.id, marks) : 0;
  return loss === 0
    ? count
    : `${count} ${loss} ${loss === 1 ? "tie or wire" : "ties and wires"} at marks that go would be lost.`;
}
