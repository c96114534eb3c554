import { seededRandom } from "../../src/base/index.ts";
import {
  KINDS,
  LIGHTS,
  RINGS,
  scoreOf,
  type WireTrial,
  wireTrial,
} from "../support/wire-trials.ts";
import type { Bench, Grid } from "./harness.ts";

/** `PINTRUTH_SEED` starts the seeds elsewhere, `PINTRUTH_WIRES` says how many of each kind, light and ring. */
const SEED = Number(process.env.PINTRUTH_SEED ?? 1);
const WIRES = Number(process.env.PINTRUTH_WIRES ?? 25);

interface Found extends WireTrial {
  readonly kind: string;
  readonly ring: keyof typeof RINGS;
  readonly light: keyof typeof LIGHTS;
}

async function found(): Promise<readonly Found[]> {
  const all: Found[] = [];
  for (const kind of Object.keys(KINDS))
    for (const ring of Object.keys(RINGS) as (keyof typeof RINGS)[])
      for (const light of Object.keys(LIGHTS) as (keyof typeof LIGHTS)[])
        for (let n = 0; n < WIRES; n++) {
          const random = seededRandom(SEED + n);
          all.push({
            kind,
            ring,
            light,
            ...(await wireTrial(random, kind, LIGHTS[light], RINGS[ring])),
          });
        }
  return all;
}

const percent = (count: number, of: number) => `${Math.round((100 * count) / of)} %`;

function lineOf(name: readonly string[], trials: readonly WireTrial[]): string[] {
  const { count, first, firstThree, sure, wrongAndSure } = scoreOf(trials);
  return [
    ...name,
    String(count),
    percent(first, count),
    percent(firstThree, count),
    percent(sure, count),
    String(wrongAndSure),
  ];
}

const COLUMNS = ["wires", "right first", "in the first three", "sure", "sure and wrong"];

const wireColours: Bench = {
  title: "Colours of wires",
  about:
    "Wires of pairs of codes taken at random, drawn by code that knows nothing of how they are told (`tests/support/wire-photo.ts`), between two others on a bench, under lights that the camera does not balance, with a camera's noise and JPEG of quality 60 to 94. Half of them have a white that was pointed at. The ring lies anywhere on the wire's face; a large one is six to nine tenths of its breadth, a small one a fourth to under a half. Right is base and tracer, or that there is none; sure is a wire without any doubt, whose base, and stripe if one is seen, stand chosen beforehand.",
  async run() {
    const all = await found();
    const byKind: Grid = {
      columns: ["wire", "ring", ...COLUMNS],
      lines: Object.keys(KINDS).flatMap((kind) =>
        Object.keys(RINGS).map((ring) =>
          lineOf(
            [kind, ring],
            all.filter((one) => one.kind === kind && one.ring === ring),
          ),
        ),
      ),
    };
    const byLight: Grid = {
      columns: ["light", ...COLUMNS],
      lines: [
        ...Object.keys(LIGHTS).map((light) =>
          lineOf(
            [light],
            all.filter((one) => one.light === light),
          ),
        ),
        lineOf(["all"], all),
      ],
    };
    return [byKind, byLight];
  },
};

export default wireColours;
