import { Cable, Sun } from "lucide-react";
import { useState } from "react";
import { distance } from "../../../base/index.ts";
import { type CavityRef, type Colour, cavityRef, type Plug } from "../../../job/index.ts";
import { dotsOnPhoto } from "../../../plug/index.ts";
import type { PhotoWhite } from "../../../scan/index.ts";
import { setMachineWire } from "../../../session/index.ts";
import { formatColour, nameColour } from "../../../standards/index.ts";
import { Button, Modal } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import type { PhotoSpot } from "../../workers/open-colour.ts";
import { ColourSwatch } from "./colour-swatch.tsx";
import { Choice } from "./fields.tsx";
import styles from "./photo-colour.module.css";
import { PhotoColourCanvas } from "./photo-colour-canvas.tsx";
import {
  NOTHING_PICKED,
  PhotoColourSheet,
  type PickedColours,
  pickedAtFirst,
} from "./photo-colour-sheet.tsx";
import { PhotoSource } from "./photo-source.tsx";
import { useChosenPhoto } from "./use-chosen-photo.ts";
import { usePhotoColours } from "./use-photo-colours.ts";
import { useTappedWire } from "./use-tapped-wire.ts";

interface PhotoColourDialogProps {
  plug: Plug;
  /** The cavity whose wire it is about; null: the one nearest to the wire that is tapped. */
  cavity: CavityRef | null;
  onClose: () => void;
}

/** Wire colours proposed from a photo of the plug, or of its wires: tap a wire, choose, note it. */
export function PhotoColourDialog({ plug, cavity, onClose }: PhotoColourDialogProps) {
  const session = useSession();
  const machineId = useSelected((state) => state.machine);
  const machine = useSelected((state) => state.job.machines).find(({ id }) => id === machineId);
  const source = useChosenPhoto(plug.photo?.file ?? null);
  const { photo, isOwn } = source;
  const { colours, problem } = usePhotoColours(photo);
  const wire = useTappedWire(colours?.port ?? null);
  const { tapped } = wire;
  const [tool, setTool] = useState<"wire" | "white">("wire");
  const [pointed, setPointed] = useState<{ spot: PhotoSpot; white: PhotoWhite } | null>(null);
  const [picked, setPicked] = useState<PickedColours>(NOTHING_PICKED);
  const [chosen, setChosen] = useState<CavityRef | null>(cavity);
  const [says, setSays] = useState<string | null>(null);

  const marks = plug.cavities.map(({ mark }) => mark);
  const dots = isOwn ? dotsOnPhoto(plug) : [];
  const nearest = tapped
    ? dots.toSorted((a, b) => distance(a.at, tapped.spot.at) - distance(b.at, tapped.spot.at))[0]
    : undefined;
  const nearestRef = nearest?.mark === undefined ? null : cavityRef(plug.id, nearest.mark);
  const ref = chosen ?? nearestRef ?? (dots.length > 0 ? null : cavityRef(plug.id, marks[0] ?? ""));
  const mark = marks.find((one) => cavityRef(plug.id, one) === ref) ?? null;
  const noted = machine?.wires.find((wire) => wire.cavity === ref)?.colour ?? null;
  const white = pointed?.white ?? colours?.white ?? null;

  const look = async (spot: PhotoSpot, under: PhotoWhite) => {
    setPicked(NOTHING_PICKED);
    const seen = (await wire.look(spot, under))?.seen;
    if (seen) setPicked(pickedAtFirst(seen));
  };
  const touch = async (spot: PhotoSpot) => {
    if (!colours || !white) return;
    setSays(null);
    if (tool === "wire") {
      await look(spot, white);
      return;
    }
    const under = await colours.port.white(spot).catch(() => null);
    if (!under) {
      setSays("That spot is too bright or too dark to tell its tone. Tap another white one.");
      return;
    }
    setPointed({ spot, white: under });
    setTool("wire");
    setSays("Colours are now told against that white.");
    if (tapped) await look(tapped.spot, under);
  };
  const note = (colour: Colour) => {
    if (ref === null || mark === null) return;
    session.edit(`Note the wire colour in ${ref}`, (draft) =>
      setMachineWire(draft, machineId, ref, { colour }),
    );
    setSays(`Noted ${formatColour(colour)}, ${nameColour(colour)}, in cavity ${mark}.`);
    wire.clear();
    const next = marks[marks.indexOf(mark) + 1] ?? mark;
    setChosen(isOwn ? null : cavityRef(plug.id, next));
  };

  const takeIn = (file: File) => {
    wire.clear();
    setPointed(null);
    setSays(null);
    void source.choose(file);
  };
  const chooser = (
    <div className={styles.head}>
      <PhotoSource isAgain={photo !== null} onFile={takeIn} />
      <p>{isOwn ? "This is the plug’s own photo." : "The picture is only looked at, not kept."}</p>
    </div>
  );
  const wrong = source.problem ?? problem ?? wire.problem;

  return (
    <Modal
      title={mark === null ? `Wire colours of ${plug.id}` : `Wire in cavity ${mark} of ${plug.id}`}
      lead={
        photo
          ? "Tap a wire, not its stripe: the ring must lie within it, so zoom in on a thin one."
          : "Bring in a picture of the wires, taken by daylight, with a sheet of paper or a white label in it."
      }
      width="wide"
      place="top"
      onClose={onClose}
    >
      <div className={styles.dialog}>
        {!photo && chooser}
        {wrong !== null && <p role="alert">{wrong}</p>}
        {!machine && <p role="alert">Add a machine first: a wire’s colour belongs to one.</p>}
        {photo && machine && !white && problem === null && (
          <p role="status">Reading the picture…</p>
        )}
        {photo && machine && white && (
          <>
            <PhotoColourCanvas
              url={photo.url}
              width={photo.width}
              height={photo.height}
              dots={dots}
              mark={mark}
              spot={tapped?.spot ?? null}
              white={pointed?.spot ?? null}
              onSpot={(spot) => void touch(spot)}
              tools={(zoom) => (
                <div className={styles.tools} role="toolbar" aria-label="What a tap says">
                  <Button
                    icon={<Cable aria-hidden />}
                    aria-pressed={tool === "wire"}
                    onClick={() => setTool("wire")}
                  >
                    Wire
                  </Button>
                  <Button
                    icon={<Sun aria-hidden />}
                    aria-pressed={tool === "white"}
                    onClick={() => setTool("white")}
                  >
                    White is here
                  </Button>
                  <span className={styles.zoom}>{zoom}</span>
                </div>
              )}
            />
            <section className={styles.side} aria-label="What it may be">
              <div className={styles.cavity}>
                <Choice
                  label="Cavity"
                  value={mark ?? ""}
                  options={[
                    ...(mark === null ? [{ value: "", text: "nearest to the tap" }] : []),
                    ...marks.map((one) => ({ value: one, text: one })),
                  ]}
                  onChange={(one) => setChosen(one === "" ? null : cavityRef(plug.id, one))}
                />
                <p className={styles.noted}>
                  <ColourSwatch colour={noted} />
                  {noted ? `${formatColour(noted)} noted` : "nothing noted yet"}
                </p>
              </div>
              <p className={styles.from}>{WHITE_FROM[white.from]}</p>
              {says !== null && <p role="status">{says}</p>}
              {tapped && !tapped.colours && <p role="status">Looking at the wire…</p>}
              {tapped?.colours && !tapped.colours.seen && (
                <p role="status">Too bright there to tell a colour. Tap where it shines less.</p>
              )}
              {tapped?.colours?.seen && ref !== null && (
                <PhotoColourSheet
                  crop={tapped.colours.crop}
                  seen={tapped.colours.seen}
                  picked={picked}
                  onPick={setPicked}
                  cavity={`cavity ${mark}`}
                  onNote={note}
                />
              )}
              {!tapped && says === null && (
                <p>{tool === "wire" ? "Tap a wire on the photo." : "Tap something white."}</p>
              )}
            </section>
            {chooser}
          </>
        )}
      </div>
    </Modal>
  );
}

const WHITE_FROM: Readonly<Record<PhotoWhite["from"], string>> = {
  tapped: "White as you pointed it out.",
  neutral: "White taken from the brightest grey or white area.",
  edges: "White guessed from the whole photo.",
  none: "Nothing white or grey found in the photo.",
};
