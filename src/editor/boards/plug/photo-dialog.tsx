import { useState } from "react";
import type { Plug } from "../../../job/index.ts";
import { cavitiesFromPhoto, dotsOnPhoto } from "../../../plug/index.ts";
import { lossOfMarks } from "../../../session/index.ts";
import { Button, Modal } from "../../app/controls/index.ts";
import { useSelected } from "../../session-context.tsx";
import { useJobStore } from "../../store-context.tsx";
import { type MeasureLine, PhotoCanvas } from "./photo-canvas.tsx";
import styles from "./photo-dialog.module.css";
import {
  PhotoFields,
  type PhotoForm,
  photoFormOf,
  photoStyleOf,
  scaleOf,
} from "./photo-fields.tsx";
import { PhotoSource } from "./photo-source.tsx";
import { FillBar, PhotoTools } from "./photo-tools.tsx";
import { accepted, dotsOf, type PhotoTool, type PhotoWork, workOn } from "./photo-work.ts";
import { useChosenPhoto } from "./use-chosen-photo.ts";

interface PhotoDialogProps {
  /** The plug to change on its photo, or to draw from one; null draws a new one. */
  plug?: Plug | null;
  onClose: () => void;
  onDraw: (drawn: Omit<Plug, "id">) => void;
}

/** A plug drawn over a photo, in the order of its marks: rows, rings and grids by one drag each. */
export function PhotoDialog({ plug = null, onClose, onDraw }: PhotoDialogProps) {
  const store = useJobStore();
  const job = useSelected((state) => state.job);
  const { photo, problem, choose } = useChosenPhoto(plug?.photo?.file ?? null);
  const [work, setWork] = useState<PhotoWork>(() => workOn(plug ? dotsOnPhoto(plug) : []));
  const [tool, setTool] = useState<PhotoTool>("row");
  const [line, setLine] = useState<MeasureLine | null>(null);
  const [form, setForm] = useState<PhotoForm>(() => photoFormOf(plug));

  const dots = dotsOf(work);
  const style = photoStyleOf(form, dots);
  const scale = scaleOf(form, line, photo?.width ?? 0, plug?.photo?.mmPerPixel ?? null);
  const face =
    dots.length === 0 || "problem" in style
      ? null
      : cavitiesFromPhoto(dots, scale, style, plug?.photo?.at);
  const marks = "problem" in style ? ({ style: "numbers", first: 1 } as const) : style;

  const takeIn = async (file: File) => {
    const read = await choose(file);
    if (!read) return;
    // The cavities keep their places in the picture, whatever its size: they are dragged from there.
    const ratio = photo ? read.width / photo.width : 1;
    setWork((now) =>
      workOn(
        dotsOf(now).map((dot) => ({ ...dot, at: [dot.at[0] * ratio, dot.at[1] * ratio] as const })),
      ),
    );
    setLine(null);
    if (form.by === "before") setForm((now) => ({ ...now, by: "pitch" }));
  };

  const draw = async () => {
    if (!photo || !face) return;
    setWork(accepted);
    const file = await store.putPicture(photo.picture);
    const name = form.name.trim();
    onDraw({
      side: form.side,
      ...(name === "" ? {} : { name }),
      ...(plug?.holds ? { holds: plug.holds } : {}),
      cavities: face.cavities.map((cavity) => {
        const opening = plug?.cavities.find(({ mark }) => mark === cavity.mark)?.opening;
        return opening ? { ...cavity, opening } : cavity;
      }),
      photo: {
        file,
        width: photo.width,
        height: photo.height,
        at: [...(plug?.photo?.at ?? [0, 0])],
        mmPerPixel: face.mmPerPixel,
      },
    });
  };

  const loss =
    plug && face
      ? lossOfMarks(
          job,
          plug.id,
          face.cavities.map(({ mark }) => mark),
        )
      : 0;
  return (
    <Modal
      title={plug ? `${plug.id} on its photo` : "Plug from a photo"}
      lead="Take the picture straight on. Put the cavities in by the order of their marks."
      width="wide"
      place="top"
      onClose={onClose}
    >
      <div className={styles.dialog}>
        <PhotoSource isAgain={photo !== null} onFile={(file) => void takeIn(file)} />
        {problem !== null && <p role="alert">{problem}</p>}
        {photo && (
          <>
            <div className={styles.work}>
              <PhotoCanvas
                url={photo.url}
                tools={(zoom) => (
                  <PhotoTools
                    tool={tool}
                    onTool={setTool}
                    work={work}
                    onWork={setWork}
                    zoom={zoom}
                  />
                )}
                width={photo.width}
                height={photo.height}
                tool={tool}
                work={work}
                onWork={setWork}
                marks={marks}
                line={line}
                onLine={(next) => {
                  setLine(next);
                  setForm((now) => ({ ...now, by: "points" }));
                }}
              />
              <FillBar tool={tool} work={work} onWork={setWork} />
            </div>
            <PhotoFields form={form} onForm={setForm} hasBefore={Boolean(plug?.photo)} />
            <div className={styles.submit}>
              <p role="status">
                {"problem" in style
                  ? style.problem
                  : dots.length > 0 && !face
                    ? MISSING[form.by]
                    : loss > 0
                      ? `${loss} ${loss === 1 ? "tie or wire" : "ties and wires"} at marks that go would be lost.`
                      : ""}
              </p>
              <Button tone="primary" disabled={!face} onClick={() => void draw()}>
                {plug ? "Change it" : "Draw it"}
              </Button>
            </div>
          </>
        )}
      </div>
    </Modal>
  );
}

/** What is still to say before lengths are known, by the way in which they are given. */
const MISSING: Readonly<Record<PhotoForm["by"], string>> = {
  pitch: "The scale is known from the second cavity on; give a length above 0.",
  points: "Choose Length and drag between two points; give a length above 0.",
  width: "Give a length above 0.",
  before: "",
};
