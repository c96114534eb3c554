import { Camera, LibraryBig } from "lucide-react";
import { faceOf } from "../../../plug/index.ts";
import { Button } from "../../app/controls/index.ts";
import styles from "./empty-plug.module.css";
import { FacePreview } from "./face-preview.tsx";
import { EMPTY_FORM, type PlanForm, planOf, withKind } from "./plan-form.ts";

interface EmptyPlugProps {
  onDraw: (start: PlanForm) => void;
  onPhoto: () => void;
  onLibrary: () => void;
}

const OFFERS: readonly { readonly text: string; readonly form: PlanForm }[] = [
  { text: "Rows and columns", form: EMPTY_FORM },
  {
    text: "Staggered rows",
    form: { ...withKind(EMPTY_FORM, "staggered"), rows: "3", columns: "4", shift: "nested" },
  },
  { text: "Rings", form: { ...withKind(EMPTY_FORM, "rings"), rings: "8", centre: true } },
];

/** What the board shows before there is a plug: three ways to draw one, the photo and the library. */
export function EmptyPlug({ onDraw, onPhoto, onLibrary }: EmptyPlugProps) {
  return (
    <div className={styles.empty}>
      <h2>Draw the plug in your hand</h2>
      <p>Choose how its cavities lie. Counts, marks, latch and key come next.</p>
      <div className={styles.offers}>
        {OFFERS.map(({ text, form }) => (
          <button key={text} type="button" className={styles.offer} onClick={() => onDraw(form)}>
            <span className={styles.picture} aria-hidden="true">
              <Sample form={form} />
            </span>
            {text}
          </button>
        ))}
      </div>
      <div className={styles.ways}>
        <Button icon={<Camera aria-hidden />} onClick={onPhoto}>
          From a photo
        </Button>
        <Button icon={<LibraryBig aria-hidden />} onClick={onLibrary}>
          From the library
        </Button>
      </div>
    </div>
  );
}

function Sample({ form }: { form: PlanForm }) {
  const plan = planOf(form);
  if ("problem" in plan) return null;
  return <FacePreview plug={{ ...faceOf(plan), side: form.side }} side={form.side} label="" />;
}
