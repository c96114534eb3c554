import { existsSync } from "node:fs";
import { expect, test } from "@playwright/test";
import { buildNetwork, circuitOf } from "../../src/circuit/index.ts";
import { type Job, type PinRef, splitRef } from "../../src/job/index.ts";
import { DiagramDesk, withoutFilePickers } from "./support/diagram-desk.ts";

/**
 * T. R. Kuphaldt, Lessons in Electric Circuits, vol. IV (Digital), figure 04062, under the Design
 * Science License: a motor run forward or reverse, interlocked, its nets lettered 1 to 6.
 */
const FIGURE = "../shared/figures/DIGI_04062.png";

type Spot = readonly [x: number, y: number];

/** Every part of the figure: id as the program names it in this order, middle in pixels of the figure. */
const PARTS: readonly (readonly [kind: string, id: string, at: Spot])[] = [
  ["switch", "S1", [59, 86]], // stop
  ["switch", "S2", [164, 86]], // forward
  ["switch", "S3", [164, 161]], // M1 across forward
  ["switch", "S4", [164, 236]], // reverse
  ["switch", "S5", [164, 311]], // M2 across reverse
  ["switch", "S6", [265, 86]], // M2 before coil M1
  ["switch", "S7", [265, 236]], // M1 before coil M2
  ["solenoid", "M1", [329, 86]], // coil M1
  ["solenoid", "M2", [329, 236]], // coil M2
  ["breaker", "Q1", [419, 86]], // OL
];

/** Where the rails leave the figure. */
const RAILS: Readonly<Record<"L1" | "L2", Spot>> = { L1: [14, 27], L2: [479, 27] };

/** Wires from pin to pin, then those that end on another one at a dot. */
const STRAIGHT: readonly (readonly [PinRef, PinRef])[] = [
  ["S1:2", "S2:1"],
  ["S2:2", "S6:1"],
  ["S6:2", "M1:1"],
  ["M1:2", "Q1:1"],
  ["S4:2", "S7:1"],
  ["S7:2", "M2:1"],
];
const ONTO_A_DOT: readonly (readonly [PinRef, Spot])[] = [
  ["S5:1", [104, 86]],
  ["S3:1", [104, 161]],
  ["S4:1", [104, 236]],
  ["S3:2", [216, 86]],
  ["S5:2", [216, 236]],
  ["M2:2", [381, 86]],
];

/** What each lettered net joins, read off the figure. */
const LETTERED: Readonly<Record<string, readonly PinRef[]>> = {
  L1: ["L1", "S1:1"],
  6: ["S1:2", "S2:1", "S3:1", "S4:1", "S5:1"],
  4: ["S2:2", "S3:2", "S6:1"],
  5: ["S4:2", "S5:2", "S7:1"],
  1: ["S6:2", "M1:1"],
  2: ["S7:2", "M2:1"],
  3: ["M1:2", "M2:2", "Q1:1"],
  L2: ["Q1:2", "L2"],
};

const away = (a: Spot, b: Spot) => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** The nets of a job, each by its pins without those of splices; a page end by the rail it lies at. */
function netsOf(job: Job): string[] {
  const network = buildNetwork(circuitOf(job, null), job.systemVoltage);
  return network.nets
    .map((net) =>
      net.pins
        .flatMap((pin) => {
          const part = network.parts.get(splitRef(pin).owner);
          if (part?.kind === "splice") return [];
          if (part?.kind !== "offpage") return [pin];
          const rail = Object.entries(RAILS).find(([, at]) => away(at, part.at) < 4);
          return [rail?.[0] ?? `${pin} at no rail`];
        })
        .toSorted()
        .join(" "),
    )
    .toSorted();
}

test("a published ladder diagram, traced by mouse, has the nets that its author lettered", async ({
  page,
}) => {
  test.skip(!existsSync(FIGURE), `${FIGURE} is absent: the published figure can't be traced`);
  test.setTimeout(180_000);
  await withoutFilePickers(page);

  await page.goto("./");
  await page.getByRole("button", { name: "Jobs" }).click();
  await page.getByRole("button", { name: "New job" }).click();
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: "Choose a file" }).click(),
  ]);
  await chooser.setFiles(FIGURE);
  const desk = new DiagramDesk(page);
  await expect(desk.canvas).toBeVisible();
  // A low table leaves the board room for the whole figure.
  await page.getByRole("button", { name: "Low table" }).click();
  await page.getByRole("button", { name: /^Show the whole sheet/ }).click();
  await page.waitForTimeout(1500);

  // Two parts laid anywhere tell where the figure lies on the board; then they are taken back.
  await desk.place("switch", "S1", [150, 150]);
  await desk.place("switch", "S2", [450, 300]);
  const onBoard = await desk.spots();
  await page.keyboard.press("Control+z");
  await page.keyboard.press("Control+z");

  for (const [kind, id, at] of PARTS) await desk.place(kind, id, onBoard(at));
  const pin = await desk.pins();
  await page.getByRole("button", { name: "Draw wires", exact: true }).click();
  for (const [from, to] of STRAIGHT) await desk.wire(pin(from), pin(to));
  for (const [from, dot] of ONTO_A_DOT) await desk.wire(pin(from), onBoard(dot));
  await desk.wireGoingOn(pin("S1:1"), onBoard(RAILS.L1));
  await desk.wireGoingOn(pin("Q1:2"), onBoard(RAILS.L2));
  await page.keyboard.press("Escape");

  const job = await desk.savedJob();
  expect(job.diagram.sheets.map((sheet) => sheet.image)).toMatchObject([
    { width: 495, height: 333 },
  ]);
  for (const [kind, id, at] of PARTS) {
    const part = job.diagram.parts.find((one) => one.id === id);
    expect(part?.kind, id).toBe(kind);
    expect(away(part?.at ?? [0, 0], at), id).toBeLessThan(4);
  }
  const splices = job.diagram.parts.filter((part) => part.kind === "splice");
  expect(splices).toHaveLength(ONTO_A_DOT.length);
  for (const [, dot] of ONTO_A_DOT) {
    const nearest = Math.min(...splices.map((splice) => away(splice.at, dot)));
    expect(nearest, `a splice at the dot ${dot}`).toBeLessThan(4);
  }
  const lettered = Object.values(LETTERED).map((pins) => pins.toSorted().join(" "));
  expect(netsOf(job)).toEqual(lettered.toSorted());
});
