/**
 * A plug read right but noted at the wrong cavities. What has to be said of it is worked out with
 * the true machine alone: every way of mislaying that gives all that was noted is put to it, and
 * only where there is one is it told for sure. No single fault gives what is noted: where the feed
 * should be there is nothing, and at a ground are full volts. The two lines touching would not do:
 * it blows the feed's fuse.
 */
import type { Random } from "../../../../src/base/index.ts";
import type { Job } from "../../../../src/job/index.ts";
import { measured, type Setup } from "../meter.ts";
import { modulesOf, type PaperJob, type TruePin } from "../paper-job.ts";
import { healthyTruth } from "../true-machine.ts";
import { type Disagreement, firstMachine, ownerOf } from "./disagreement.ts";

type Plug = Job["plugs"][number];
/** Mark where something was noted, and the mark where it really is; null: beyond the end. */
type Really = ReadonlyMap<string, string | null>;
interface Way {
  readonly is: "exchanged" | "shifted" | "mirrored";
  /** The finding's chief subject. */
  readonly chief: string;
  readonly really: Really;
}
interface Noted {
  readonly setup: Setup;
  readonly mark: string;
  readonly value: number;
}

const RULES = {
  exchanged: "cavities-swapped",
  shifted: "row-off-by-one",
  mirrored: "face-mirrored",
} as const;
const UNDECIDED = "mislaid-undecided";

/** Shares of system voltage below which two readings are alike, and above which they surely are not. */
const ALIKE = 0.02;
const UNLIKE = 0.4;
/** Share of system voltage below which there is nothing; as much less than all of it is a feed. */
const SLIGHT = 0.1;

const marksOf = ({ cavities }: Plug) => cavities.map(({ mark }) => mark);

function waysOf(plug: Plug): readonly Way[] {
  const marks = marksOf(plug);
  const exchanged = marks.flatMap((a, at) =>
    marks.slice(at + 1).map(
      (b): Way => ({
        is: "exchanged",
        chief: `${plug.id}:${a}`,
        really: new Map([
          [a, b],
          [b, a],
        ]),
      }),
    ),
  );
  const lines = new Map<number, Plug["cavities"]>();
  for (const one of plug.cavities) lines.set(one.at[1], [...(lines.get(one.at[1]) ?? []), one]);
  const rows = [...lines.values()].map((row) =>
    row.toSorted((a, b) => a.at[0] - b.at[0]).map(({ mark }) => mark),
  );
  const shifted = [...rows, ...(rows.length > 1 ? [marks] : [])]
    .filter(({ length }) => length > 1)
    .flatMap((row) =>
      [1, -1].map(
        (by): Way => ({
          is: "shifted",
          chief: plug.id,
          really: new Map(row.map((mark, at) => [mark, row[at + by] ?? null])),
        }),
      ),
    );
  const across = plug.cavities.map(({ at }) => at[0]);
  const sum = Math.min(...across) + Math.max(...across);
  const image = plug.cavities.map(({ mark, at: [x, y] }) => {
    const there = plug.cavities.find(({ at }) => at[0] === sum - x && at[1] === y);
    return [mark, there?.mark ?? null] as const;
  });
  const isWhole = image.every(([, to]) => to !== null) && image.some(([mark, to]) => mark !== to);
  const mirrored: Way[] = isWhole
    ? [{ is: "mirrored", chief: plug.id, really: new Map(image) }]
    : [];
  return [...exchanged, ...shifted, ...mirrored];
}

type Likeness = "alike" | "unlike" | "nobody-knows";

/** What the true machine shows where each thing noted would really be. */
class Told {
  private readonly shown = new Map<string, number | null>();
  private readonly show: (setup: Setup) => number | null;
  private readonly plug: Plug;
  private readonly known: ReadonlyMap<string, TruePin>;

  constructor(
    show: (setup: Setup) => number | null,
    plug: Plug,
    known: ReadonlyMap<string, TruePin>,
  ) {
    this.show = show;
    this.plug = plug;
    this.known = known;
  }

  at(setup: Setup, from: string, to: string): number | null {
    const moved = (probe: string) =>
      probe === `${this.plug.id}:${from}` ? `${this.plug.id}:${to}` : probe;
    const own = { ...setup, red: moved(setup.red), black: moved(setup.black) };
    const key = JSON.stringify(own);
    const value = this.shown.has(key) ? (this.shown.get(key) ?? null) : this.show(own);
    this.shown.set(key, value);
    return value;
  }

  like({ setup, mark, value }: Noted, really: Really, volts: number): Likeness {
    const to = really.has(mark) ? (really.get(mark) ?? null) : mark;
    if (to === null) return "unlike";
    const pin = this.known.get(to);
    const own = this.plug.cavities.find((one) => one.mark === to);
    if (!pin && !own?.empty && !own?.blocked) return "nobody-knows";
    if (pin && !isPlain(pin)) return "nobody-knows";
    const there = this.at(setup, mark, to);
    if (there === null) return "nobody-knows";
    const apart = Math.abs(there - value) / volts;
    return apart < ALIKE ? "alike" : apart > UNLIKE ? "unlike" : "nobody-knows";
  }
}

/** Of a line with nothing but contacts, wires and ohmic loads on it. */
const isPlain = ({ bearsLamp, isOhmic, fits }: TruePin) =>
  bearsLamp && isOhmic && !fits.includes("signal");

const pinsAt = (paper: PaperJob, plug: Plug): ReadonlyMap<string, TruePin> =>
  new Map(
    paper.pins.flatMap((pin) =>
      pin.cavity !== null && ownerOf(pin.cavity) === plug.id
        ? [[pin.cavity.slice(plug.id.length + 1), pin]]
        : [],
    ),
  );

const isOnly = (pin: TruePin | undefined, role: "supply" | "ground"): boolean =>
  pin?.fits.length === 1 && pin.fits[0] === role;

/** Whether it has a feed noted at a ground. */
const hasFeedAtGround = ({ really }: Way, known: ReadonlyMap<string, TruePin>): boolean =>
  [...really].some(
    ([mark, to]) => isOnly(known.get(mark), "ground") && isOnly(known.get(to ?? ""), "supply"),
  );

/** Puts a feed's cavity where the ground's would be seen; where cavities lie is nothing to the machine. */
function bringTogether(random: Random, paper: PaperJob, plug: Plug, is: Way["is"]): void {
  const known = pinsAt(paper, plug);
  const those = (role: "supply" | "ground") =>
    plug.cavities.filter(({ mark }) => isOnly(known.get(mark), role));
  const [feeds, grounds] = [those("supply"), those("ground")];
  if (feeds.length === 0 || grounds.length === 0) return;
  const feed = random.pick(feeds);
  const [x, y] = random.pick(grounds).at;
  const across = plug.cavities.map(({ at }) => at[0]);
  const beside = plug.cavities.flatMap(({ at }) => (at[1] === y && at[0] > x ? [at[0]] : []));
  const wanted =
    is === "mirrored" ? Math.min(...across) + Math.max(...across) - x : Math.min(...beside);
  const there = plug.cavities.find(({ at }) => at[0] === wanted && at[1] === y);
  if (!there || wanted === x) return;
  [feed.at, there.at] = [there.at, feed.at];
}

/** Modules of a machine that is small enough for every single fault to be tried. */
const MOST_MODULES = 1;

/** `isSure`: whether it must be, or must not be, the only way of mislaying that explains all. */
function inject(random: Random, paper: PaperJob, is: Way["is"], isSure: boolean) {
  const { job } = paper;
  if (modulesOf(paper).length > MOST_MODULES) return null;
  if (is !== "exchanged") for (const plug of job.plugs) bringTogether(random, paper, plug, is);
  const places = job.plugs.flatMap((plug) => {
    const known = pinsAt(paper, plug);
    const ways = waysOf(plug);
    return ways
      .filter((way) => way.is === is && hasFeedAtGround(way, known))
      .map((did) => ({ plug, known, ways, did }));
  });
  if (places.length === 0) return null;
  const { plug, known, ways, did } = random.pick(places);
  const truth = healthyTruth(random, paper);
  const show = (setup: Setup) => {
    const value = measured(random, truth, setup);
    return typeof value === "number" ? value : null;
  };
  const told = new Told(show, plug, known);
  const when = { unplugged: [...modulesOf(paper)] };
  const setupsAt = (mark: string): readonly Setup[] => [
    { quantity: "volts", red: `${plug.id}:${mark}`, black: "chassis", when, with: "test-lamp" },
    { quantity: "volts", red: "battery+", black: `${plug.id}:${mark}`, when, with: "test-lamp" },
  ];
  const volts = job.systemVoltage;
  const noted = plug.cavities.flatMap(({ mark }): Noted[] => {
    const really = did.really.has(mark) ? did.really.get(mark) : mark;
    const pin = known.get(really ?? "");
    if (really == null || !pin || !isPlain(pin)) return [];
    return setupsAt(mark).flatMap((setup) => {
      const value = told.at(setup, mark, really);
      return value === null ? [] : [{ setup, mark, value }];
    });
  });
  const nothing: Really = new Map();
  const drawn = noted.map((one) => told.like(one, nothing, volts));
  if (drawn.includes("nobody-knows")) return null;
  const isOdd = (at: number) => drawn[at] === "unlike";
  const oddMarks = new Set(noted.flatMap(({ mark }, at) => (isOdd(at) ? [mark] : [])));

  const liveAt = (role: "supply" | "ground", isLive: boolean) =>
    noted.filter(
      ({ mark, setup, value }, at) =>
        setup.black === "chassis" &&
        isOdd(at) &&
        isOnly(known.get(mark), role) &&
        (isLive ? value > (1 - SLIGHT) * volts : value < SLIGHT * volts),
    );
  const feed = liveAt("supply", false);
  const found = liveAt("ground", true);
  if (feed.length === 0 || found.length === 0) return null;

  const asked = ways.filter(
    (way) => way.is !== "exchanged" || [...oddMarks].every((mark) => way.really.has(mark)),
  );
  const judged = asked.map((way) => ({
    way,
    likes: noted.map((one) => told.like(one, way.really, volts)),
  }));
  const possible = judged.filter(({ likes }) => !likes.includes("unlike"));
  // a way that nobody can rule out for want of knowledge judges nothing
  if (possible.some(({ likes }) => likes.includes("nobody-knows"))) return null;
  const moves = ({ really }: Way) => [...really].filter(([mark, to]) => mark !== to).length;
  const [best, ...rivals] = possible.map(({ way }) => way).toSorted((a, b) => moves(a) - moves(b));
  if (!best) return null;
  const others = rivals.filter((way) => !isRowOf(best, way));
  if (isSure !== (others.length === 0)) return null;

  const machine = firstMachine(paper);
  machine.wires = machine.wires.filter(({ cavity }) => ownerOf(cavity) !== plug.id);
  const first = [...feed, ...found];
  [...first, ...noted.filter((one) => !first.includes(one))].forEach(({ setup, value }, at) => {
    machine.readings.push({ id: `noted${at + 1}`, ...setup, value });
  });
  return [`${isSure ? RULES[best.is] : UNDECIDED} ${best.chief}`];
}

/** A row off by one, and the whole plug it is in: the one says what the other says. */
const isRowOf = (row: Way, whole: Way): boolean =>
  row.is === "shifted" &&
  whole.is === "shifted" &&
  [...row.really].every(([mark, to]) => to === null || whole.really.get(mark) === to);

const mislaying = (
  name: string,
  ways: readonly Way["is"][],
  isSure: boolean = true,
): Disagreement => ({
  name,
  // what else is said of the odd readings is what other rules make of them, each by itself
  rules: [...Object.values(RULES), UNDECIDED],
  forgetsReadings: true,
  inject: (random, paper) => inject(random, paper, random.pick(ways), isSure),
});

export const MISLAID: readonly Disagreement[] = [
  mislaying("two cavities exchanged", ["exchanged"]),
  mislaying("a row read one place off", ["shifted"]),
  mislaying("the face read from its other side", ["mirrored"]),
  mislaying(
    "a slip that another one explains as well",
    ["exchanged", "shifted", "mirrored"],
    false,
  ),
];
