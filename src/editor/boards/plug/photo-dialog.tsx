import { Undo2 } from "lucide-react";
import { useEffect, useState } from "react";
import type { Point } from "../../../base/index.ts";
import { describeIssue } from "../../../base/index.ts";
import { type Picture, type Plug, pictureType } from "../../../job/index.ts";
import { cavitiesFromPhotoClicks, type PhotoScale } from "../../../plug/index.ts";
import { Button, Modal } from "../../app/controls/index.ts";
import { useJobStore } from "../../store-context.tsx";
import { Choice, FieldGroup, TextField } from "./fields.tsx";
import { PhotoClicks } from "./photo-clicks.tsx";
import styles from "./photo-dialog.module.css";
import { SIDES } from "./plan-fields.tsx";
import { EMPTY_FORM, type MarkKind, markStyleOf } from "./plan-form.ts";

interface Photo {
  readonly picture: Picture;
  readonly url: string;
  /** Pixels, upright as the camera meant it. */
  readonly width: number;
  readonly height: number;
}

interface PhotoDialogProps {
  onClose: () => void;
  onDraw: (drawn: Omit<Plug, "id">) => void;
}

const MARKS: readonly { value: MarkKind; text: string }[] = [
  { value: "numbers", text: "1, 2, 3 …" },
  { value: "letters", text: "A, B, C …" },
  { value: "clear-letters", text: "letters without I, O, Q" },
];

/** A plug drawn by clicking its cavities on a photo, in the order of their marks. */
export function PhotoDialog({ onClose, onDraw }: PhotoDialogProps) {
  const store = useJobStore();
  const [photo, setPhoto] = useState<Photo | null>(null);
  const [clicks, setClicks] = useState<readonly Point[]>([]);
  const [problem, setProblem] = useState<string | null>(null);
  const [fields, setFields] = useState({
    marks: EMPTY_FORM.marks,
    first: "1",
    by: "pitch" as PhotoScale["by"],
    mm: "5",
    side: EMPTY_FORM.side,
    name: "",
  });
  const set = <K extends keyof typeof fields>(field: K, value: (typeof fields)[K]) =>
    setFields((now) => ({ ...now, [field]: value }));
  useEffect(() => () => (photo ? URL.revokeObjectURL(photo.url) : undefined), [photo]);

  const style = markStyleOf({ marks: fields.marks, first: fields.first, typed: "" }, clicks.length);
  const mm = Number(fields.mm.replace(",", "."));
  const scale: PhotoScale =
    fields.by === "pitch" ? { by: "pitch", mm } : { by: "width", mm, pixels: photo?.width ?? 0 };
  const face =
    clicks.length === 0 || "problem" in style
      ? null
      : cavitiesFromPhotoClicks(clicks, scale, style);

  const choose = async (file: File | undefined) => {
    if (!file) return;
    const read = await readPhoto(file);
    if (typeof read === "string") {
      setProblem(read);
      return;
    }
    setProblem(null);
    setClicks([]);
    setPhoto(read);
  };

  const draw = async () => {
    if (!photo || !face) return;
    const file = await store.putPicture(photo.picture);
    const name = fields.name.trim();
    onDraw({
      side: fields.side,
      ...(name === "" ? {} : { name }),
      cavities: face.cavities,
      photo: {
        file,
        width: photo.width,
        height: photo.height,
        at: [0, 0],
        mmPerPixel: face.mmPerPixel,
      },
    });
  };

  return (
    <Modal
      title="Plug from a photo"
      lead="Take the picture straight on. Then click the cavities in the order of their marks."
      width="wide"
      onClose={onClose}
    >
      <div className={styles.dialog}>
        <label className={styles.file}>
          {photo ? "Another picture" : "Choose a picture"}
          <input
            type="file"
            accept="image/png,image/jpeg,image/webp"
            onChange={(event) => void choose(event.target.files?.[0])}
          />
        </label>
        {problem !== null && <p role="alert">{problem}</p>}
        {photo && (
          <>
            <PhotoClicks
              url={photo.url}
              width={photo.width}
              height={photo.height}
              clicks={clicks}
              marks={face?.cavities.map((cavity) => cavity.mark) ?? []}
              onClicks={setClicks}
            />
            <div className={styles.acts}>
              <Button
                icon={<Undo2 aria-hidden />}
                disabled={clicks.length === 0}
                onClick={() => setClicks(clicks.slice(0, -1))}
              >
                Take the last one back
              </Button>
              <p role="status">
                {clicks.length === 1 ? "1 cavity" : `${clicks.length} cavities`}
                {clicks.length > 0 && !face
                  ? fields.by === "pitch" && clicks.length < 2
                    ? "; the scale is known from the second one on"
                    : "; give a length above 0"
                  : ""}
              </p>
            </div>
            <FieldGroup title="Marks and scale">
              <Choice
                label="Marks"
                value={fields.marks}
                options={MARKS}
                onChange={(marks) => set("marks", marks)}
              />
              {fields.marks === "numbers" && (
                <TextField
                  label="First number"
                  numeric
                  value={fields.first}
                  onChange={(first) => set("first", first)}
                />
              )}
              <Choice
                label="Known length"
                value={fields.by}
                options={[
                  { value: "pitch", text: "first to second cavity" },
                  { value: "width", text: "width of the picture" },
                ]}
                onChange={(by) => set("by", by)}
              />
              <TextField
                label="It measures"
                unit="mm"
                numeric
                value={fields.mm}
                onChange={(text) => set("mm", text)}
              />
              <Choice
                label="Taken of the"
                value={fields.side}
                options={SIDES}
                onChange={(side) => set("side", side)}
              />
              <TextField label="Name" value={fields.name} onChange={(name) => set("name", name)} />
            </FieldGroup>
            <Button tone="primary" disabled={!face} onClick={() => void draw()}>
              Draw it
            </Button>
          </>
        )}
      </div>
    </Modal>
  );
}

/** The picture ready to show, or what is wrong with it. */
async function readPhoto(file: File): Promise<Photo | string> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const header = pictureType(bytes, file.name);
  if (!header.ok) return header.issues.map(describeIssue).join(" ");
  const blob = new Blob([bytes], { type: header.value.type });
  try {
    // The browser turns it upright by the camera's own note; the header's size is before that.
    const bitmap = await createImageBitmap(blob);
    const { width, height } = bitmap;
    bitmap.close();
    const picture = { bytes, type: header.value.type };
    return { picture, url: URL.createObjectURL(blob), width, height };
  } catch {
    return `${file.name} is damaged: take or export the picture again.`;
  }
}
