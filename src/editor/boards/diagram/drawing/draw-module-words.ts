import { add, type Point, scale } from "../../../../base/index.ts";
import type { PinRef } from "../../../../job/index.ts";
import type { Verdict } from "../../../../roles/index.ts";
import { type PartShape, unitOf } from "../../../../session/index.ts";
import { type Ink, SMALLEST_TEXT, write } from "./ink.ts";

/** A sign of its own for each verdict, so that no meaning hangs on a colour alone. */
const SIGNS: Readonly<Partial<Record<Verdict, string>>> = {
  agrees: "✓",
  contradicted: "✕",
  undecided: "?",
};

/** The mark and the printed word of every pin, inside the module's box, with the verdict. */
export function drawModuleWords(
  ink: Ink,
  visible: readonly PartShape[],
  verdicts: ReadonlyMap<PinRef, Verdict>,
): void {
  for (const shape of visible) {
    const { part } = shape;
    if (part.kind !== "module") continue;
    const unit = unitOf(part);
    if (1.5 * unit * ink.camera.zoom < SMALLEST_TEXT) {
      drawPins(ink, shape);
      continue;
    }
    drawPins(ink, shape);
    part.pins.forEach((pin, index) => {
      const spot = shape.pins[index];
      if (!spot) return;
      const inward: Point = spot.out ? scale(spot.out, -1) : [1, 0];
      const level = inward[0] !== 0;
      const turn = level ? 0 : -90;
      // Words run left to right, or bottom to top on the upper and lower edges.
      const forward = level ? inward[0] > 0 : inward[1] < 0;
      const align: CanvasTextAlign = forward ? "left" : "right";
      const place = (units: number) => add(spot.at, scale(inward, units * unit));
      const verdict = verdicts.get(spot.ref);
      const sign = verdict && SIGNS[verdict];
      const size = 1.5 * unit;
      const markWidth = write(ink, {
        text: pin.id,
        at: place(0.7),
        size,
        align,
        turn,
        bold: true,
      });
      const from = 1.4 + markWidth / unit;
      const wrong = verdict === "contradicted";
      const wordWidth = write(ink, {
        text: pin.printed ?? "",
        at: place(from),
        size,
        align,
        turn,
        struck: wrong,
        colour: wrong ? ink.palette.contradiction : ink.palette.ink,
      });
      if (!sign) return;
      write(ink, {
        text: sign,
        at: place(from + 0.7 + wordWidth / unit),
        size,
        align,
        turn,
        bold: true,
        colour: wrong
          ? ink.palette.contradiction
          : verdict === "agrees"
            ? ink.palette.agrees
            : ink.palette.inkSoft,
      });
    });
  }
}

function drawPins({ canvas, camera, palette }: Ink, { part, pins }: PartShape): void {
  const radius = Math.max(unitOf(part) * 0.35, 2 / camera.zoom);
  canvas.lineWidth = radius * 0.6;
  canvas.strokeStyle = palette.ink;
  canvas.fillStyle = palette.paperRaised;
  for (const { at } of pins) {
    canvas.beginPath();
    canvas.arc(at[0], at[1], radius, 0, 2 * Math.PI);
    canvas.fill();
    canvas.stroke();
  }
}
