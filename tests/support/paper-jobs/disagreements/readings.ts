import type { Random } from "../../../../src/base/index.ts";
import type { Reading } from "../../../../src/job/index.ts";
import { measured, type Setup } from "../meter.ts";
import { modulesOf, type PaperJob, pinsOfModule } from "../paper-job.ts";
import { healthyTruth } from "../true-machine.ts";
import {
  type Disagreement,
  firstMachine,
  moduleOf,
  ownerOf,
  type Tied,
  wiredPins,
} from "./disagreement.ts";
import { wordFindings } from "./printed-words.ts";

const ID = "taken1";

const add = (paper: PaperJob, setup: Setup, value: Reading["value"], id = ID): void => {
  firstMachine(paper).readings.push({ id, ...setup, value });
};

const only = (paper: PaperJob, role: string): readonly Tied[] =>
  wiredPins(paper).filter(({ fits }) => fits.length === 1 && fits[0] === role);

/** A pin that is live with its module unplugged: not one that only the module's own relay feeds. */
function livePin(random: Random, paper: PaperJob): Tied | null {
  const truth = healthyTruth(random, paper);
  const isLive = (pin: Tied) =>
    Number(measured(random, truth, bare(pin))) > 0.9 * paper.job.systemVoltage;
  const live = only(paper, "supply").filter(isLive);
  return live.length === 0 ? null : random.pick(live);
}

const bare = (pin: Tied): Setup => ({
  quantity: "volts",
  red: pin.cavity,
  black: "chassis",
  when: { unplugged: [ownerOf(pin.pin)] },
});

/** A reading that proves nothing, whatever the machine is like. */
const invalid = (
  name: string,
  make: (random: Random, paper: PaperJob) => readonly [Setup, Reading["value"]] | null,
): Disagreement => ({
  name,
  inject(random, paper) {
    const made = make(random, paper);
    if (made === null) return null;
    add(paper, ...made);
    return [`reading-not-valid ${ID}`];
  },
});

export const INVALID_READINGS: readonly Disagreement[] = [
  invalid("ohms on a live line", (random, paper) => {
    const fed = livePin(random, paper);
    return fed && [{ ...bare(fed), quantity: "ohms" }, 12.4];
  }),
  invalid("amps across the battery", () => [
    { quantity: "amps", red: "battery+", black: "chassis", when: {} },
    7.5,
  ]),
  invalid("amps from a feed to ground", (random, paper) => {
    const fed = livePin(random, paper);
    return fed && [{ ...bare(fed), quantity: "amps" }, 8.2];
  }),
  invalid("a test lamp on a sensor's line", (random, paper) => {
    const some = wiredPins(paper).filter(
      ({ bearsLamp, inside }) => !bearsLamp && inside !== "nothing",
    );
    return some.length === 0 ? null : [{ ...bare(random.pick(some)), with: "test-lamp" }, 0.4];
  }),
  invalid("OL as volts", (random, paper) => [bare(random.pick(wiredPins(paper))), "OL"]),
  invalid("ohms below zero", (random, paper) => {
    const pin = random.pick(wiredPins(paper));
    const when = { unplugged: [ownerOf(pin.pin)], removed: ["G1"] };
    return [{ ...bare(pin), quantity: "ohms", when }, -12];
  }),
  invalid("a position that no switch has", (random, paper) => {
    const key = paper.job.diagram.parts.find(
      (part) => part.kind === "switch" && part.control === "key",
    );
    if (!key) return null;
    return [{ ...bare(random.pick(wiredPins(paper))), when: { switches: { [key.id]: "on" } } }, 12];
  }),
  invalid("a probe where there is nothing", (random, paper) => {
    const plug = random.pick(paper.job.plugs);
    return [{ quantity: "volts", red: `${plug.id}:98`, black: "chassis", when: {} }, 0];
  }),
  invalid("beyond the meter", (random, paper) => [bare(random.pick(wiredPins(paper))), 1500]),
];

/** A word that the reading forbids, printed at a pin that the circuit says it is wrong at too. */
const forbidden = (name: string, role: "supply" | "ground", word: string): Disagreement => ({
  name,
  forgetsReadings: true,
  inject(random, paper) {
    const grounds = only(paper, "ground");
    const ground = grounds.length === 0 ? null : random.pick(grounds);
    const pin = role === "ground" ? ground : livePin(random, paper);
    if (pin === null) return null;
    const module = moduleOf(paper, ownerOf(pin.pin));
    for (const own of module.pins) if (`${module.id}:${own.id}` === pin.pin) own.printed = word;
    const lamp: Setup = { ...bare(pin), with: "test-lamp" };
    const setup: Setup = role === "ground" ? { ...lamp, red: "battery+", black: pin.cavity } : lamp;
    const value = measured(random, healthyTruth(random, paper), setup);
    if (value === null) return null;
    add(paper, setup, value);
    const words = module.pins.map(({ printed }) => printed ?? null);
    return [
      ...wordFindings(module.id, pinsOfModule(paper, module.id), words),
      `reading-contradicts-printed ${ID}`,
    ];
  },
});

/** Whether the same two points were read in the same state, with every switch at rest, by a meter. */
function isOfSame({ job }: PaperJob, reading: Reading, setup: Setup): boolean {
  const { quantity, red, black, when, with: instrument = "meter" } = reading;
  const alike = (one: readonly string[] = [], other: readonly string[] = []) =>
    one.toSorted().join() === other.toSorted().join();
  const isAtRest = Object.entries(when.switches ?? {}).every(([id, position]) =>
    job.diagram.parts.some(
      (part) => part.id === id && part.kind === "switch" && part.rest === position,
    ),
  );
  return (
    quantity === setup.quantity &&
    instrument === "meter" &&
    alike([red, black], [setup.red, setup.black]) &&
    alike(when.unplugged, setup.when.unplugged) &&
    alike(when.removed, setup.when.removed) &&
    isAtRest
  );
}

/** Volts at a live pin that no fault of the circuit could give. */
const impossible = (name: string, share: number): Disagreement => ({
  name,
  inject(random, paper) {
    const pin = livePin(random, paper);
    if (pin === null) return null;
    // of a module that is plugged in nobody knows what it could give
    const setup: Setup = { ...bare(pin), when: { unplugged: [...modulesOf(paper)] } };
    const isKnown = firstMachine(paper).readings.some((reading) => isOfSame(paper, reading, setup));
    add(paper, setup, Number((share * paper.job.systemVoltage).toFixed(2)));
    return [
      `reading-contradicts-circuit ${ID}`,
      // one without a time counts as the earliest
      ...(isKnown ? [`readings-disagree ${ID}`] : []),
    ];
  },
});

export const READINGS: readonly Disagreement[] = [
  {
    name: "nothing where the feed should be",
    forgetsReadings: true,
    inject(random, paper) {
      const pin = livePin(random, paper);
      if (pin === null) return null;
      add(paper, bare(pin), 0);
      return [`reading-unexpected ${ID}`];
    },
  },
  impossible("twice the volts that there are", 2.1),
  impossible("volts the wrong way round", -1.04),
  {
    name: "one thing read twice",
    forgetsReadings: true,
    inject(random, paper) {
      const pin = livePin(random, paper);
      if (pin === null) return null;
      const setup = bare(pin);
      const value = measured(random, healthyTruth(random, paper), setup);
      if (value === null) return null;
      add(paper, { ...setup, at: "2026-04-01T08:00:00Z" }, value, "first");
      add(paper, { ...setup, at: "2026-04-01T09:00:00Z" }, 0, "second");
      return ["readings-disagree first", "reading-unexpected second"];
    },
  },
  forbidden("a solid return where the word says supply", "ground", "BATT"),
  forbidden("a feed that holds where the word says ground", "supply", "GND"),
];
