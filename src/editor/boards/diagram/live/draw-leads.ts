import type { Point } from "../../../../base/index.ts";
import { terminalOf } from "../../../../circuit/index.ts";
import { isFixedProbe, type Job, type Probe } from "../../../../job/index.ts";
import type { Leads, Scene } from "../../../../session/index.ts";
import { type Ink, write } from "../drawing/ink.ts";

const COLOURS = { red: "#b3131b", black: "#1c1c1c" } as const;

/** Where a probe lies on the sheet: at its pin, at the pin of its cavity, at the first ground or battery. */
export function probeSpot(scene: Scene, job: Job, probe: Probe): Point | null {
  const pin = scene.pins.get(probe);
  if (pin) return pin.at;
  if (!isFixedProbe(probe)) {
    const link = job.links.find((one) => one.cavity === probe);
    return (link && scene.pins.get(link.pin)?.at) ?? null;
  }
  const terminal =
    probe === "chassis" ? "chassis" : probe === "battery+" ? "battery-plus" : "battery-minus";
  for (const shape of scene.parts) {
    const spot = shape.pins.find((one) => terminalOf(shape.part, one.pin) === terminal);
    if (spot) return spot.at;
  }
  return null;
}

/** The two leads as flags on their places. */
export function drawLeads(ink: Ink, scene: Scene, job: Job, leads: Leads): void {
  const { canvas, camera, palette } = ink;
  const px = 1 / camera.zoom;
  for (const lead of ["black", "red"] as const) {
    const probe = leads[lead];
    // Black on chassis is where a meter's lead is as a matter of course.
    if (probe === null || (lead === "black" && probe === "chassis" && leads.red === null)) continue;
    const at = probeSpot(scene, job, probe);
    if (!at) continue;
    const [x, y] = at;
    const [top, wide, high] = [y - 44 * px, 46 * px, 22 * px];
    const left = lead === "red" ? x - 4 * px : x - wide + 4 * px;
    canvas.strokeStyle = COLOURS[lead];
    canvas.fillStyle = COLOURS[lead];
    canvas.lineWidth = 3 * px;
    canvas.beginPath();
    canvas.moveTo(x, y);
    canvas.lineTo(x, top + high);
    canvas.stroke();
    canvas.beginPath();
    canvas.roundRect(left, top, wide, high, 5 * px);
    canvas.fill();
    canvas.strokeStyle = palette.paperRaised;
    canvas.lineWidth = 1.5 * px;
    canvas.stroke();
    write(
      { ...ink, palette: { ...palette, paperRaised: COLOURS[lead] } },
      {
        text: lead,
        at: [left + wide / 2, top + high / 2],
        size: 14 * px,
        align: "center",
        bold: true,
        colour: "#ffffff",
      },
    );
  }
}
