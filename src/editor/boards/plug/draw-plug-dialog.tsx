import { LibraryBig } from "lucide-react";
import { useState } from "react";
import type { Job, Plug } from "../../../job/index.ts";
import { faceOf, type LibraryFace, NEUTRAL_PLACES_NOTE } from "../../../plug/index.ts";
import { lossOfMarks } from "../../../session/index.ts";
import type { TrailerPlug } from "../../../standards/index.ts";
import { Button, Modal } from "../../app/controls/index.ts";
import { useSelected } from "../../session-context.tsx";
import styles from "./draw-plug-dialog.module.css";
import { FaceLibrary } from "./face-library.tsx";
import { FacePreview } from "./face-preview.tsx";
import { PlanFields } from "./plan-fields.tsx";
import { EMPTY_FORM, formOf, libraryForm, type PlanForm, planOf } from "./plan-form.ts";
import { PublishedPins } from "./published-pins.tsx";

interface DrawPlugDialogProps {
  /** The plug to draw anew; null draws a new one. */
  plug: Plug | null;
  start?: PlanForm;
  /** Begins in the library instead of in the fields. */
  fromLibrary?: boolean;
  onClose: () => void;
  onDraw: (drawn: Omit<Plug, "id">) => void;
}

/** Draws the face of a plug by its arrangement, with the result in view while the fields change. */
export function DrawPlugDialog(props: DrawPlugDialogProps) {
  const { plug, start, onClose, onDraw } = props;
  const job = useSelected((state) => state.job);
  const [form, setForm] = useState(() => start ?? (plug ? formOf(plug) : EMPTY_FORM));
  const [choosing, setChoosing] = useState(props.fromLibrary ?? false);
  const plan = planOf(form);
  const problem = "problem" in plan ? plan.problem : null;
  const drawn = "problem" in plan ? null : drawnPlug(form, faceOf(plan));
  if (choosing) {
    return (
      <Modal key="library" title="Library of faces" width="wide" onClose={onClose}>
        <FaceLibrary
          onChoose={(face) => {
            setForm((now) => withFace(now, face));
            setChoosing(false);
          }}
          onBack={() => setChoosing(false)}
        />
      </Modal>
    );
  }
  return (
    <Modal
      key="fields"
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
          <Button
            className={styles.library}
            icon={<LibraryBig aria-hidden />}
            onClick={() => setChoosing(true)}
          >
            Choose from the library
          </Button>
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
          {form.neutral && <p className={styles.neutral}>{NEUTRAL_PLACES_NOTE}</p>}
          {form.published && drawn && isMarkedBy(form.published, drawn) && (
            <PublishedPins table={form.published} />
          )}
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

/** The fields of a face of the library; what was said of this plug itself stays. */
function withFace(form: PlanForm, face: LibraryFace): PlanForm {
  const { side, holds } = form;
  const chosen = libraryForm(face);
  return { ...chosen, side, holds, name: form.name === "" ? chosen.name : form.name };
}

/** Whether the marks drawn are those of the table, in its order. */
const isMarkedBy = (table: TrailerPlug, drawn: Omit<Plug, "id">) =>
  table.pins.length === drawn.cavities.length &&
  table.pins.every((pin, index) => drawn.cavities[index]?.mark === pin.mark);

function drawnPlug(form: PlanForm, face: ReturnType<typeof faceOf>): Omit<Plug, "id"> {
  const name = form.name.trim();
  return {
    side: form.side,
    ...face,
    ...(name === "" ? {} : { name }),
    ...(form.holds === "" ? {} : { holds: form.holds }),
    ...(form.neutral ? { neutral: true } : {}),
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
  const ties = `${loss} ${loss === 1 ? "tie or wire" : "ties and wires"}`;
  return [
    count,
    loss === 0 ? "" : `${ties} at marks that go would be lost.`,
    plug?.photo ? "The photo behind it would go." : "",
  ]
    .filter((note) => note !== "")
    .join(" ");
}
