import { Cable, Sun } from "lucide-react";
import { useEffect, useState } from "react";
import { distance } from "../../../base/index.ts";
import { type CavityRef, type Colour, cavityRef, type Plug } from "../../../job/index.ts";
import { dotsOnPhoto } from "../../../plug/index.ts";
import type { PhotoWhite, SeenWire } from "../../../scan/index.ts";
import { setMachineWire } from "../../../session/index.ts";
import { formatColour, nameColour } from "../../../standards/index.ts";
import { Button, Modal } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { useJobStore } from "../../store-context.tsx";
import { ColourSwatch } from "./colour-swatch.tsx";
import { Choice } from "./fields.tsx";
import styles from "./photo-colour.module.css";
import { PhotoColourCanvas } from "./photo-colour-canvas.tsx";
import { type PhotoSpot, whiteOf, whiteOfSpot, wireOfSpot } from "./photo-colour-pixels.ts";
import { PhotoColourSheet, type PickedColours, pickedAtFirst } from "./photo-colour-sheet.tsx";
import { photoOf, type ReadPhoto, readPhoto } from "./read-photo.ts";

interface PhotoColourDialogProps {
  plug: Plug;
  /** The cavity whose wire it is about; null: the one nearest to the wire that is tapped. */
  cavity: CavityRef | null;
  onClose: () => void;
}

/** The photo at hand, with its pixels and whether it is the plug's own. */
interface Opened {
  readonly photo: ReadPhoto;
  readonly bitmap: ImageBitmap;
  readonly isOwn: boolean;
  readonly white: PhotoWhite;
}

/** A wire that was tapped. */
interface Tapped {
  readonly spot: PhotoSpot;
  /** Null: too bright. */
  readonly seen: SeenWire | null;
}

/** Wire colours proposed from a photo of the plug, or of its wires: tap a wire, choose, note it. */
export function PhotoColourDialog({ plug, cavity, onClose }: PhotoColourDialogProps) {
  const session = useSession();
  const machineId = useSelected((state) => state.machine);
  const machine = useSelected((state) => state.job.machines).find(({ id }) => id === machineId);
  const { opened, problem, choose } = useOpened(plug);
  const [tool, setTool] = useState<"wire" | "white">("wire");
  const [pointed, setPointed] = useState<{ spot: PhotoSpot; white: PhotoWhite } | null>(null);
  const [tapped, setTapped] = useState<Tapped | null>(null);
  const [picked, setPicked] = useState<PickedColours>({ base: undefined, tracer: undefined });
  const [chosen, setChosen] = useState<CavityRef | null>(cavity);
  const [says, setSays] = useState<string | null>(null);

  const marks = plug.cavities.map(({ mark }) => mark);
  const dots = opened?.isOwn ? dotsOnPhoto(plug) : [];
  const nearest = tapped
    ? dots.toSorted((a, b) => distance(a.at, tapped.spot.at) - distance(b.at, tapped.spot.at))[0]
    : undefined;
  const nearestRef = nearest?.mark === undefined ? null : cavityRef(plug.id, nearest.mark);
  const ref = chosen ?? nearestRef ?? (dots.length > 0 ? null : cavityRef(plug.id, marks[0] ?? ""));
  const mark = marks.find((one) => cavityRef(plug.id, one) === ref) ?? null;
  const noted = machine?.wires.find((wire) => wire.cavity === ref)?.colour ?? null;
  const white = pointed?.white ?? opened?.white ?? null;

  const look = (spot: PhotoSpot, under: PhotoWhite) => {
    if (!opened) return;
    const seen = wireOfSpot(opened.bitmap, spot, under);
    setTapped({ spot, seen });
    if (seen) setPicked(pickedAtFirst(seen));
  };
  const touch = (spot: PhotoSpot) => {
    if (!opened || !white) return;
    setSays(null);
    if (tool === "wire") {
      look(spot, white);
      return;
    }
    const under = whiteOfSpot(opened.bitmap, spot);
    if (!under) {
      setSays("That spot is too bright or too dark to tell its tone. Tap another white one.");
      return;
    }
    setPointed({ spot, white: under });
    setTool("wire");
    if (tapped) look(tapped.spot, under);
    setSays("Colours are now told against that white.");
  };
  const note = (colour: Colour) => {
    if (ref === null || mark === null) return;
    session.edit(`Note the wire colour in ${ref}`, (draft) =>
      setMachineWire(draft, machineId, ref, { colour }),
    );
    setSays(`Noted ${formatColour(colour)}, ${nameColour(colour)}, in cavity ${mark}.`);
    setTapped(null);
    const next = marks[marks.indexOf(mark) + 1] ?? mark;
    setChosen(opened?.isOwn ? null : cavityRef(plug.id, next));
  };

  const chooser = (
    <div className={styles.head}>
      <label className={styles.file}>
        {opened ? "Another picture" : "Choose a picture of the wires"}
        <input
          type="file"
          accept="image/png,image/jpeg,image/webp"
          onChange={(event) => {
            setTapped(null);
            setPointed(null);
            void choose(event.target.files?.[0]);
          }}
        />
      </label>
      {!opened?.isOwn && <p>It is only looked at, not kept.</p>}
    </div>
  );

  return (
    <Modal
      title={mark === null ? `Wire colours of ${plug.id}` : `Wire in cavity ${mark} of ${plug.id}`}
      lead="Tap a wire: the ring must lie within it, so zoom in on a thin one."
      width="wide"
      place="top"
      onClose={onClose}
    >
      <div className={styles.dialog}>
        {!opened && chooser}
        {problem !== null && <p role="alert">{problem}</p>}
        {!machine && <p role="alert">Add a machine first: a wire's colour belongs to one.</p>}
        {opened && machine && white && (
          <>
            <PhotoColourCanvas
              url={opened.photo.url}
              width={opened.photo.width}
              height={opened.photo.height}
              dots={dots}
              mark={mark}
              spot={tapped?.spot ?? null}
              white={pointed?.spot ?? null}
              onSpot={touch}
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
              {tapped && !tapped.seen && (
                <p role="status">Too bright there to tell a colour. Tap where it shines less.</p>
              )}
              {tapped?.seen && ref !== null && (
                <PhotoColourSheet
                  photo={opened.bitmap}
                  spot={tapped.spot}
                  seen={tapped.seen}
                  white={white}
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

/** The plug's own photo, or the one the user chooses in its place. */
function useOpened(plug: Plug) {
  const store = useJobStore();
  const [opened, setOpened] = useState<Opened | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const known = plug.photo?.file ?? null;

  useEffect(
    () => () => {
      if (!opened) return;
      URL.revokeObjectURL(opened.photo.url);
      opened.bitmap.close();
    },
    [opened],
  );

  useEffect(() => {
    if (known === null) return;
    let stale = false;
    const load = async () => {
      const picture = await store.getPicture(known);
      const read = picture ? await photoOf(picture, known) : `The picture ${known} is not there.`;
      const ready = typeof read === "string" ? read : await openedOf(read, true);
      if (stale) return;
      if (typeof ready === "string") setProblem(ready);
      else setOpened(ready);
    };
    void load();
    return () => {
      stale = true;
    };
  }, [known, store]);

  const choose = async (file: File | undefined) => {
    if (!file) return;
    const read = await readPhoto(file);
    if (typeof read === "string") {
      setProblem(read);
      return;
    }
    setProblem(null);
    setOpened(await openedOf(read, false));
  };
  return { opened, problem, choose };
}

async function openedOf(photo: ReadPhoto, isOwn: boolean): Promise<Opened> {
  const { picture } = photo;
  const blob = new Blob([picture.bytes as BlobPart], { type: picture.type });
  const bitmap = await createImageBitmap(blob);
  return { photo, bitmap, isOwn, white: whiteOf(bitmap) };
}
