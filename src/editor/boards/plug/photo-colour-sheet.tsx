import { useEffect, useRef } from "react";
import type { Colour } from "../../../job/index.ts";
import type { ColourDoubt, SeenWire } from "../../../scan/index.ts";
import { type ColourCode, formatColour, nameColour } from "../../../standards/index.ts";
import { Button } from "../../app/controls/index.ts";
import styles from "./photo-colour.module.css";
import { PhotoColourChoice } from "./photo-colour-choice.tsx";

/** What the user has taken so far; `undefined`: nothing yet, null: no tracer. */
export interface PickedColours {
  readonly base: ColourCode | undefined;
  readonly tracer: ColourCode | null | undefined;
}

export const NOTHING_PICKED: PickedColours = { base: undefined, tracer: undefined };

/**
 * What stands chosen before the user has touched anything: only what there is no doubt about. That there
 * is no tracer never does: the side away from the camera is not seen.
 */
export const pickedAtFirst = ({ base, tracer, isSure }: SeenWire): PickedColours =>
  isSure ? { base: base.ranked[0]?.code, tracer: tracer?.ranked[0]?.code } : NOTHING_PICKED;

export function colourOf({ base, tracer }: PickedColours): Colour | null {
  if (base === undefined || tracer === undefined) return null;
  return tracer === null ? { base } : { base, tracer };
}

interface PhotoColourSheetProps {
  /** The spot and what lies round it; closed by whoever made it. */
  crop: ImageBitmap;
  seen: SeenWire;
  picked: PickedColours;
  onPick: (picked: PickedColours) => void;
  /** E.g. `cavity 4`. */
  cavity: string;
  onNote: (colour: Colour) => void;
}

/** What the spot shows, what it may be called, and the button that notes it. */
export function PhotoColourSheet(props: PhotoColourSheetProps) {
  const { seen, picked, onPick } = props;
  const colour = colourOf(picked);
  return (
    <div className={styles.sheet}>
      <div className={styles.what}>
        <Crop bitmap={props.crop} />
        <p role="status">{saysOf(seen)}</p>
      </div>
      <PhotoColourChoice
        label="Base"
        seen={seen.base}
        first={seen.isGnye ? "GNYE" : null}
        value={picked.base}
        none={null}
        except={null}
        onPick={(base) => {
          if (!base) return;
          const tracer = base === "GNYE" || picked.tracer === base ? null : picked.tracer;
          onPick({ base, tracer });
        }}
      />
      <PhotoColourChoice
        label="Tracer"
        seen={seen.tracer ?? seen.maybe}
        value={picked.tracer}
        none={seen.tracer ? "last" : "first"}
        except={picked.base ?? null}
        onPick={(tracer) => onPick({ ...picked, tracer })}
      />
      <div className={styles.note}>
        <Button tone="primary" disabled={!colour} onClick={() => colour && props.onNote(colour)}>
          {colour
            ? `Note ${formatColour(colour)} in ${props.cavity}`
            : `Choose what it is, then note it in ${props.cavity}`}
        </Button>
        {/* Its line is kept: the button stays where it is when the choice is made. */}
        <p>{colour && nameColour(colour)}</p>
      </div>
    </div>
  );
}

function saysOf({ doubt, tracer, maybe }: SeenWire): string {
  if (doubt) return DOUBTS[doubt](tracer !== null, maybe !== null);
  return tracer
    ? "One pair of colours is nearest by far. Look at the wire before you note it."
    : "No stripe on the side in sight: look at the other side, then say what its tracer is, or none.";
}

const DOUBTS: Readonly<Record<ColourDoubt, (hasStripe: boolean, mayHaveOne: boolean) => string>> = {
  white: () =>
    "What is white in this photo is not certain: tap White is here, then something white. Until then choose by your eyes.",
  gnye: () => "Green and yellow share it evenly: it may be the one colour GNYE.",
  halves: () => "Both colours cover much of it: look which is the base and which the stripe.",
  near: () => "Several colours lie near: look at the wire and choose.",
  light: (hasStripe, mayHaveOne) =>
    hasStripe || mayHaveOne
      ? "The line along it may be a stripe, a gleam or a shadow: look at the wire and choose."
      : "It is not of one tone all over: look for a stripe and choose.",
  beside: (hasStripe) =>
    hasStripe
      ? "What lies beside the ring may be a stripe of this wire or another wire: look and choose."
      : "No stripe within the ring, but the edges of the wire can't be told: look at all of it and choose.",
};

/** Pixels of the crop a side, and of the ring in its middle. */
const SIDE = 104;
const RING = SIDE / 6.4;

/** The spot and what lies round it, larger. */
function Crop({ bitmap }: { bitmap: ImageBitmap }) {
  const ref = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const draw = ref.current?.getContext("2d");
    if (!draw) return;
    draw.clearRect(0, 0, SIDE, SIDE);
    draw.drawImage(bitmap, 0, 0, SIDE, SIDE);
    draw.lineWidth = 4;
    for (const style of ["#ffffff", "#1c1c1c"]) {
      draw.strokeStyle = style;
      draw.beginPath();
      draw.arc(SIDE / 2, SIDE / 2, RING, 0, 2 * Math.PI);
      draw.stroke();
      draw.lineWidth = 1.5;
    }
  }, [bitmap]);
  return <canvas ref={ref} className={styles.crop} width={SIDE} height={SIDE} />;
}
