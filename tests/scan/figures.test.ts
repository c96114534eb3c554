import { existsSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { createCanvas, loadImage } from "@napi-rs/canvas";
import { describe, expect, test } from "vitest";
import type { Box, Point } from "../../src/base/index.ts";
import { greyFrom } from "../../src/scan/raster.ts";
import { tracePicture } from "../../src/scan/trace.ts";

/**
 * Figures of T. R. Kuphaldt, "Lessons in Electric Circuits" (Design Science License), which are not
 * kept here. Boxes and terminals are measured on the pictures; nets are what the figures letter.
 */
const FIGURES = fileURLToPath(new URL("../../../shared/figures", import.meta.url));

interface Figure {
  readonly file: string;
  /** Left, top, right, bottom. */
  readonly parts: Readonly<Record<string, readonly [number, number, number, number]>>;
  readonly terminals: Readonly<Record<string, Point>>;
  readonly nets: readonly (readonly string[])[];
}

const FIGURE_LIST: readonly Figure[] = [
  {
    file: "DC_00131.png",
    parts: {
      battery: [53, 181, 88, 215],
      vi1: [210, 70, 246, 102],
      vi2: [345, 70, 381, 102],
      vi3: [210, 235, 246, 267],
      vi4: [345, 235, 381, 267],
      R1: [219, 119, 237, 160],
      R2: [354, 119, 372, 160],
      R3: [219, 284, 237, 325],
      R4: [354, 284, 372, 325],
    },
    terminals: {
      "battery:+": [70, 181],
      "battery:-": [70, 215],
      "vi1:+": [228, 70],
      "vi1:-": [228, 102],
      "vi2:+": [363, 70],
      "vi2:-": [363, 102],
      "vi3:+": [228, 235],
      "vi3:-": [228, 267],
      "vi4:+": [363, 235],
      "vi4:-": [363, 267],
      "R1:1": [228, 119],
      "R1:2": [228, 160],
      "R2:1": [363, 119],
      "R2:2": [363, 160],
      "R3:1": [228, 284],
      "R3:2": [228, 325],
      "R4:1": [363, 284],
      "R4:2": [363, 325],
    },
    nets: [
      ["battery:+", "vi1:+", "vi2:+"],
      ["vi1:-", "R1:1"],
      ["vi2:-", "R2:1"],
      ["R1:2", "R2:2", "vi3:+", "vi4:+"],
      ["vi3:-", "R3:1"],
      ["vi4:-", "R4:1"],
      ["R3:2", "R4:2", "battery:-"],
    ],
  },
  {
    file: "DC_00392.png",
    parts: {
      battery: [49, 99, 85, 131],
      R1: [180, 64, 207, 92],
      R2: [255, 65, 283, 92],
      R3: [213, 108, 249, 125],
      R4: [180, 141, 208, 168],
      R5: [255, 140, 283, 168],
    },
    terminals: {
      "battery:+": [67, 99],
      "battery:-": [67, 131],
      "R1:1": [207, 64],
      "R1:2": [180, 92],
      "R2:1": [255, 65],
      "R2:2": [283, 92],
      "R3:1": [213, 116],
      "R3:2": [249, 116],
      "R4:1": [180, 141],
      "R4:2": [208, 168],
      "R5:1": [283, 140],
      "R5:2": [255, 168],
    },
    nets: [
      ["battery:+", "R1:1", "R2:1"],
      ["R1:2", "R3:1", "R4:1"],
      ["R2:2", "R3:2", "R5:1"],
      ["battery:-", "R4:2", "R5:2"],
    ],
  },
  {
    file: "DIGI_04062.png",
    parts: {
      stop: [43, 66, 74, 92],
      forward: [152, 62, 176, 92],
      latch1: [155, 146, 173, 177],
      reverse: [152, 212, 176, 242],
      latch2: [155, 296, 173, 327],
      lock2: [254, 69, 285, 103],
      coil1: [313, 71, 345, 103],
      overload: [404, 69, 435, 103],
      lock1: [254, 219, 285, 253],
      coil2: [313, 221, 345, 253],
    },
    terminals: {
      L1: [13, 26],
      "stop:1": [43, 87],
      "stop:2": [74, 87],
      "forward:1": [152, 87],
      "forward:2": [176, 87],
      "latch1:1": [155, 161],
      "latch1:2": [173, 161],
      "reverse:1": [152, 237],
      "reverse:2": [176, 237],
      "latch2:1": [155, 311],
      "latch2:2": [173, 311],
      "lock2:1": [254, 87],
      "lock2:2": [285, 87],
      "coil1:1": [313, 87],
      "coil1:2": [345, 87],
      "overload:1": [404, 87],
      "overload:2": [435, 87],
      "lock1:1": [254, 237],
      "lock1:2": [285, 237],
      "coil2:1": [313, 237],
      "coil2:2": [345, 237],
      L2: [479, 27],
    },
    nets: [
      ["L1", "stop:1"],
      ["stop:2", "forward:1", "latch1:1", "reverse:1", "latch2:1"],
      ["forward:2", "latch1:2", "lock2:1"],
      ["lock2:2", "coil1:1"],
      ["coil1:2", "overload:1", "coil2:2"],
      ["reverse:2", "latch2:2", "lock1:1"],
      ["lock1:2", "coil2:1"],
      ["overload:2", "L2"],
    ],
  },
  {
    file: "SEMI_03249.png",
    parts: {
      batteryA: [57, 123, 92, 155],
      diodeA: [118, 93, 137, 112],
      lampA: [161, 122, 197, 158],
      voltsA: [106, 12, 145, 82],
      lampVoltsA: [235, 80, 275, 150],
      batteryB: [343, 125, 377, 158],
      diodeB: [401, 93, 420, 112],
      lampB: [446, 122, 482, 158],
      voltsB: [392, 4, 432, 74],
      lampVoltsB: [519, 79, 560, 150],
    },
    terminals: {
      "batteryA:+": [75, 123],
      "batteryA:-": [75, 155],
      "diodeA:A": [118, 103],
      "diodeA:K": [137, 103],
      "lampA:1": [179, 122],
      "lampA:2": [179, 158],
      "batteryB:-": [359, 125],
      "batteryB:+": [359, 158],
      "diodeB:A": [401, 103],
      "diodeB:K": [420, 103],
      "lampB:1": [464, 122],
      "lampB:2": [464, 158],
    },
    nets: [
      ["batteryA:+", "diodeA:A"],
      ["diodeA:K", "lampA:1"],
      ["batteryA:-", "lampA:2"],
      ["batteryB:-", "diodeB:A"],
      ["diodeB:K", "lampB:1"],
      ["batteryB:+", "lampB:2"],
    ],
  },
];

const isThere = existsSync(FIGURES);
if (!isThere) console.warn(`Skipped: the book's figures are not at ${FIGURES}.`);

describe.skipIf(!isThere)("figures of a book", () => {
  for (const figure of FIGURE_LIST) {
    test.each([1, 2])(`${figure.file} at %dx: every net as it is lettered`, async (times) => {
      const image = await loadImage(join(FIGURES, figure.file));
      const [width, height] = [image.width * times, image.height * times];
      const pen = createCanvas(width, height).getContext("2d");
      pen.fillStyle = "white";
      pen.fillRect(0, 0, width, height);
      pen.imageSmoothingEnabled = times > 1;
      pen.drawImage(image, 0, 0, width, height);
      const { data } = pen.getImageData(0, 0, width, height);
      const parts = Object.values(figure.parts).map(
        ([left, top, right, bottom]): Box => ({
          left: left * times,
          top: top * times,
          right: right * times,
          bottom: bottom * times,
        }),
      );
      const terminals = Object.fromEntries(
        Object.entries(figure.terminals).map(([name, [x, y]]) => [name, [x * times, y * times]]),
      ) as Record<string, Point>;
      const { nets } = tracePicture(greyFrom({ width, height, data }), { terminals, parts });
      const sorted = (lists: readonly (readonly string[])[]) =>
        lists.map((names) => [...names].sort().join(" ")).sort();
      expect(sorted(nets.map((net) => net.terminals))).toEqual(sorted(figure.nets));
    });
  }
});
