import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, test } from "vitest";
import { type Box, boxContains, distance } from "../../../src/base/index.ts";
import type { Job } from "../../../src/job/index.ts";
import { found, greyOf, SURE } from "../../support/drawn-symbols/small-page.ts";

/** Milliseconds that they may take beside other work. */
const PATIENCE = 120_000;

/** T. R. Kuphaldt, "Lessons in Electric Circuits" (Design Science License), not kept here. */
const FIGURE = fileURLToPath(new URL("../../../../shared/figures/DC_00131.png", import.meta.url));

test.skipIf(!existsSync(FIGURE))(
  "a published figure: its five batteries and four resistors, and nothing else that is sure",
  async () => {
    const sure = found(await greyOf(FIGURE)).filter(({ confidence }) => confidence >= SURE);
    const kinds = sure.map(({ kind }) => kind).sort();
    expect(kinds).toEqual([...Array(5).fill("battery"), ...Array(4).fill("resistor")]);
    // Middles of the boxes that its lines are traced between, measured on the picture.
    const middles = [
      [70, 198],
      [228, 86],
      [363, 86],
      [228, 251],
      [363, 251],
      [228, 139],
      [363, 139],
      [228, 304],
      [363, 304],
    ] as const;
    for (const middle of middles) {
      expect(sure.filter(({ at }) => distance(at, middle) < 5)).toHaveLength(1);
    }
  },
  PATIENCE,
);

/** Of the same book: a transformer, whose core and windings are no grounds, beside two that are. */
const TRANSFORMER = fileURLToPath(
  new URL("../../../../shared/figures/DIGI_04007.png", import.meta.url),
);

test.skipIf(!existsSync(TRANSFORMER))(
  "a published figure with a transformer: its two grounds, and nothing else that is sure",
  async () => {
    const sure = found(await greyOf(TRANSFORMER)).filter(({ confidence }) => confidence >= SURE);
    expect(sure.map(({ kind }) => kind)).toEqual(["ground", "ground"]);
    // Their middle bars, measured on the picture.
    for (const bar of [
      [487, 170],
      [299, 320],
    ] as const) {
      expect(sure.filter(({ box }) => boxContains(box, bar))).toHaveLength(1);
    }
  },
  PATIENCE,
);

/** The demo's picture with what is drawn over it by hand, and what is found on it. */
async function demo() {
  const url = (file: string) => new URL(`../../../sample-data/sweeper/${file}`, import.meta.url);
  const job: Job = JSON.parse(await readFile(url("job.json"), "utf8"));
  const proposals = found(await greyOf(url("images/sweeper-sheet-7.jpg")));
  const sure = proposals.filter(({ confidence }) => confidence >= SURE);
  const drawn = job.diagram.parts.filter(({ kind }) => kind !== "splice");
  return { proposals, sure, drawn };
}

describe("the demo's scan", () => {
  let looked: Awaited<ReturnType<typeof demo>>;
  beforeAll(async () => {
    looked = await demo();
  }, PATIENCE);

  test("every part that is drawn is found and sure, and nothing else is", () => {
    const { sure, drawn } = looked;
    const kindsOf = (list: readonly { readonly kind: string }[]) =>
      list.map(({ kind }) => kind).sort();
    expect(kindsOf(sure)).toEqual(kindsOf(drawn));
    for (const { id, kind, at } of drawn) {
      const near = sure.filter((one) => one.kind === kind && distance(one.at, at) < 20);
      expect(near, `${kind} ${id}`).toHaveLength(1);
    }
  });

  test("the module has its six pins where its lines leave it, in reading order", () => {
    const { sure, drawn } = looked;
    const module = sure.find(({ kind }) => kind === "module");
    const printed = drawn.find(({ kind }) => kind === "module");
    if (printed?.kind !== "module" || !module?.pins) throw new Error("no module");
    expect(module.pins.map(({ side }) => side)).toEqual(Array(6).fill("bottom"));
    module.pins.forEach(({ at }, n) => {
      const [dx, dy] = printed.pins[n]?.at ?? [0, 0];
      expect(distance(at, [printed.at[0] + dx, printed.at[1] + dy])).toBeLessThan(12);
    });
  });

  test("the plug's face, the notes and the title block hold nothing even likely", () => {
    const { proposals } = looked;
    const blocks: readonly Box[] = [
      { left: 610, top: 1630, right: 1110, bottom: 2080 },
      { left: 1180, top: 1800, right: 2230, bottom: 2120 },
      { left: 2220, top: 2080, right: 3420, bottom: 2400 },
    ];
    const within = proposals.filter(
      ({ at, confidence }) => confidence >= 0.5 && blocks.some((block) => boxContains(block, at)),
    );
    expect(within).toEqual([]);
  });
});
