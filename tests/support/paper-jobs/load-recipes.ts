/** Pins that drive something, read a sensor, talk to another module or lead nowhere. */
import { fedByEvent, type Recipe } from "./feed-recipes.ts";
import type { LoadKind } from "./loom.ts";
import type { ModuleDraft } from "./module-draft.ts";
import { ROLES } from "./words.ts";

const WINDINGS: readonly LoadKind[] = ["solenoid", "heater", "horn", "lamp"];

const highOutput: Recipe = (module) => {
  const { loom } = module;
  const pin = module.pin({ fits: ["output"], side: "high", inside: "output-high" });
  const line = { pin, mm2: 2.5 };
  loom.load(line, loom.ground(), WINDINGS);
  if (loom.random.chance(0.4)) loom.load(line, loom.ground(), ["lamp", "solenoid"]);
};

const ledOutput: Recipe = (module) => {
  const { loom } = module;
  const pin = module.pin({ fits: ["output"], side: "high", inside: "output-high", isOhmic: false });
  loom.load({ pin, mm2: 2.5 }, loom.ground(), ["led"]);
};

const lowOutput: Recipe = (module) => {
  const { loom } = module;
  const feed = loom.feed();
  const pin = module.pin({ fits: ["output"], side: "low", inside: "output-low" });
  loom.load(feed, pin, WINDINGS);
};

/** A valve with a flyback diode, cathode to the feed. */
const lowValve: Recipe = (module) => {
  const { loom } = module;
  const feed = loom.fused(loom.key);
  const pin = module.pin({ fits: ["output"], side: "low", inside: "output-low", isOhmic: false });
  const valve = loom.part("solenoid", "M", { ohms: loom.volts * 1.5, diode: true });
  loom.run(feed.pin, `${valve}:1`, feed.mm2);
  loom.run(`${valve}:2`, pin, feed.mm2);
};

const coilOutput: Recipe = (module) => {
  const { loom } = module;
  const pin = module.pin({ fits: ["output"], side: "high", inside: "output-high" });
  const relay = loom.part("relay", "K", { coilOhms: loom.volts === 12 ? 90 : 330 });
  loom.run(pin, `${relay}:86`, 2.5);
  loom.run(`${relay}:85`, loom.ground(), 2.5);
  const feed = loom.fused(loom.main);
  loom.run(feed.pin, `${relay}:30`, feed.mm2);
  loom.load({ pin: `${relay}:87`, mm2: feed.mm2 }, loom.ground());
};

const motorBetween: Recipe = (module) => {
  const { loom } = module;
  const one = module.pin({ fits: ["output"], inside: "output-high" });
  const other = module.pin({ fits: ["output"], inside: "output-low" });
  loom.load({ pin: one, mm2: 2.5 }, other, ["motor"]);
};

/** A stop switch's wire that also lights a lamp. */
const stopSwitch: Recipe = (module) => {
  const { loom } = module;
  const feed = loom.contact("operator", loom.feed());
  const fits = [...fedByEvent(module), "output"] as const;
  const pin = module.pin({ fits, side: "high", inside: "input-high" });
  loom.run(pin, feed.pin, feed.mm2);
  loom.load({ pin, mm2: feed.mm2 }, loom.ground(), ["lamp"]);
};

const sender: Recipe = (module) => {
  const { loom } = module;
  const fits = ["input"] as const;
  const pin = module.pin({ fits, side: "low", inside: "input-low", bearsLamp: false });
  const id = loom.part("sender", "B", { ohmsMin: 10, ohmsMax: 180 });
  loom.run(pin, `${id}:1`, 1.5);
  loom.run(`${id}:2`, loom.ground(), 1.5);
};

const potentiometer: Recipe = (module) => {
  const { loom } = module;
  const isTold = loom.random.chance(0.5);
  const no = { bearsLamp: false };
  const plus = module.pin({
    fits: isTold ? ["sensor-supply"] : ["sensor-supply", "sensor-ground"],
    inside: "sensor-supply",
    ...no,
  });
  const minus = module.pin({
    fits: isTold ? ["sensor-ground"] : ["sensor-supply", "sensor-ground"],
    inside: "sensor-ground",
    ...no,
  });
  const wiper = module.pin({ fits: ["input"], inside: "input-high", ...no });
  const id = loom.part("potentiometer", "R", { ohms: 5000 });
  loom.run(plus, `${id}:1`, 1.5);
  loom.run(minus, `${id}:2`, 1.5);
  loom.run(wiper, `${id}:W`, 1.5);
  if (isTold) module.sources.push({ between: [plus, minus], volts: 5, ohms: 10 });
};

const activeSensor: Recipe = (module) => {
  const { loom } = module;
  const no = { bearsLamp: false, isOhmic: false };
  const output = loom.random.pick(["pnp", "npn", "analog"] as const);
  // a pnp output makes its line live, an npn output grounds it (IEC 60947-5-2, from memory)
  const side = ({ pnp: "high", npn: "low", analog: null } as const)[output];
  const id = loom.part("sensor", "B", { output });
  const plus = module.pin({ fits: ["sensor-supply"], inside: "sensor-supply", ...no });
  const minus = module.pin({ fits: ["sensor-ground"], inside: "sensor-ground", ...no });
  const signal = module.pin({ fits: ["input"], side, inside: "input-high", ...no });
  loom.run(plus, `${id}:+`, 1.5);
  loom.run(minus, `${id}:-`, 1.5);
  loom.run(signal, `${id}:S`, 1.5);
};

const untraced: Recipe = (module) => {
  const { loom } = module;
  const fits = ROLES.filter((role) => role !== "unused");
  const pin = module.pin({ fits, inside: "nothing", bearsLamp: false, isOhmic: false });
  const label = loom.random.chance(0.5) ? { label: loom.id("to page ") } : {};
  loom.run(pin, `${loom.part("offpage", "XU", label)}:1`, 1.5);
};

const unused: Recipe = (module) => {
  module.pin({ fits: ["unused"], inside: "nothing", bearsLamp: false }, false);
};

/** A line, or a pair of them, between two modules and to nothing else. */
export function dataLines(one: ModuleDraft, other: ModuleDraft): void {
  for (let lines = 2; lines > 0; lines--) {
    const facts = { fits: ["signal"], inside: "signal", bearsLamp: false, isOhmic: false } as const;
    one.loom.run(one.pin(facts), other.pin(facts), 1.5);
  }
}

export const LOAD_RECIPES: readonly Recipe[] = [
  highOutput,
  highOutput,
  highOutput,
  ledOutput,
  lowOutput,
  lowOutput,
  lowValve,
  coilOutput,
  motorBetween,
  stopSwitch,
  sender,
  potentiometer,
  activeSensor,
  untraced,
  unused,
  unused,
];
