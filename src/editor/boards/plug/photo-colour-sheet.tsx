import { useEffect, useRef } from "react";
import type { Colour } from "../../../job/index.ts";
import type { PhotoWhite, SeenWire } from "../../../scan/index.ts";
import { type ColourCode, formatColour, nameColour } from "../../../standards/index.ts";
import { Button } from "../../app/controls/index.ts";
import styles from "./photo-colour.module.css";
import { PhotoColourChoice } from "./photo-colour-choice.tsx";
import type { PhotoSpot } from "./photo-colour-pixels.ts";

/** What the user has taken so far; `undefined`: nothing yet, null: no tracer. */
export interface PickedColours {
  readonly base: ColourCode | undefined;
  readonly tracer: ColourCode | null | undefined;
}

/** What stands chosen before the user has touched anything: only what there is no doubt about. */
export function pickedAtFirst({ base, tracer, isSure }: SeenWire): PickedColours {
  return {
    base: isSure ? base.ranked[0]?.code : undefined,
    tracer: tracer === null ? null : isSure ? tracer.ranked[0]?.code : undefined,
  };
}

export function colourOf({ base, tracer }: PickedColours): Colour | null {
  if (base === undefined || tracer === undefined) return null;
  return tracer === null ? { base } : { base, tracer };
}

interface PhotoColourSheetProps {
  photo: ImageBitmap;
  spot: PhotoSpot;
  seen: SeenWire;
  white: PhotoWhite;
  picked: PickedColours;
  onPick: (picked: PickedColours) => void;
  /** E.g. `cavity 4`. */
  cavity: string;
  onNote: (colour: Colour) => void;
}

/** What the spot shows, what it may be called, and the button that notes it. */
export function PhotoColourSheet(props: PhotoColourSheetProps) {
  const { seen, white, picked, onPick } = props;
  const colour = colourOf(picked);
  return (
    <div className={styles.sheet}>
      <div className={styles.what}>
        <Crop photo={props.photo} spot={props.spot} />
        <p role="status">{saysOf(seen, white)}</p>
      </div>
      <PhotoColourChoice
        label="Base"
        seen={seen.base}
        first={seen.isGnye ? "GNYE" : null}
        value={picked.base}
        mayBeNone={false}
        except={null}
        onPick={(base) => {
          if (!base) return;
          const tracer = base === "GNYE" || picked.tracer === base ? null : picked.tracer;
          onPick({ base, tracer });
        }}
      />
      <PhotoColourChoice
        label="Tracer"
        seen={seen.tracer}
        value={picked.tracer}
        mayBeNone
        except={picked.base ?? null}
        onPick={(tracer) => onPick({ ...picked, tracer })}
      />
      <div className={styles.note}>
        <Button tone="primary" disabled={!colour} onClick={() => colour && props.onNote(colour)}>
          {colour
            ? `Note ${formatColour(colour)} in ${props.cavity}`
            : `Choose what it is, then note it in ${props.cavity}`}
        </Button>
        {colour && <p>{nameColour(colour)}</p>}
      </div>
    </div>
  );
}

function saysOf(seen: SeenWire, white: PhotoWhite): string {
  if (seen.isSure) return "One colour is nearest by far. Look at the wire before you note it.";
  if (white.isDoubtful)
    return "What is white in this photo is not certain: tap White is here, then something white. Until then choose by your eyes.";
  if (seen.isGnye) return "Green and yellow share it evenly: it may be the one colour GNYE.";
  if (seen.base.likely > 1 || (seen.tracer?.likely ?? 1) > 1)
    return "Several colours lie near: look at the wire and choose.";
  if (seen.tracer) return "The stripe may be a gleam or a shadow: look at the wire and choose.";
  return "It can't be told for certain: look at the wire and choose.";
}

/** Pixels of the crop a side, and how many radii of the spot it shows each way. */
const SIDE = 104;
const ROOM = 3.2;

/** The spot and what lies round it, larger. */
function Crop({ photo, spot: { at, reach } }: { photo: ImageBitmap; spot: PhotoSpot }) {
  const ref = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const draw = ref.current?.getContext("2d");
    if (!draw) return;
    const room = reach * ROOM;
    draw.clearRect(0, 0, SIDE, SIDE);
    draw.drawImage(photo, at[0] - room, at[1] - room, 2 * room, 2 * room, 0, 0, SIDE, SIDE);
    draw.lineWidth = 4;
    draw.strokeStyle = "#ffffff";
    for (const style of ["#ffffff", "#1c1c1c"]) {
      draw.strokeStyle = style;
      draw.beginPath();
      draw.arc(SIDE / 2, SIDE / 2, SIDE / 2 / ROOM, 0, 2 * Math.PI);
      draw.stroke();
      draw.lineWidth = 1.5;
    }
  }, [photo, at, reach]);
  return <canvas ref={ref} className={styles.crop} width={SIDE} height={SIDE} />;
}
