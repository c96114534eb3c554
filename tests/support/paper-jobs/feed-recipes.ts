/** Pins by which a module is fed, grounded and told something; each with what the page says fits. */
import type { RoleName } from "../../../src/job/index.ts";
import type { Line, Loom } from "./loom.ts";
import type { ModuleDraft } from "./module-draft.ts";

export type Recipe = (module: ModuleDraft) => void;

/** Contacts that neither feed a module that has another feed nor protect anybody. */
const EVENTS = ["operator", "operator", "limit", "pressure", "temperature", "level"] as const;

const anyFeed = (loom: Loom): Line => loom.feed();
const eventContact = (loom: Loom, line: Line): Line => {
  const control = loom.random.pick(EVENTS);
  return loom.contact(control, line, control === "operator" ? { springReturn: true } : {});
};

/** Live through an event: an input; a feed too where nothing else feeds the module. */
export const fedByEvent = ({ hasFeed }: ModuleDraft): readonly RoleName[] =>
  hasFeed ? ["input"] : ["switched-supply", "input"];
const groundedByEvent = ({ hasGround }: ModuleDraft): readonly RoleName[] =>
  hasGround ? ["input"] : ["switched-ground", "input"];

export const batteryFeed: Recipe = (module) => {
  const { loom } = module;
  const feed = loom.fused(loom.main);
  loom.run(module.pin({ fits: ["supply"], inside: "feed" }), feed.pin, feed.mm2);
};

export const keyFeed: Recipe = (module) => {
  const { loom } = module;
  const feed = loom.fused(loom.key);
  loom.run(module.pin({ fits: ["switched-supply"], inside: "feed" }), feed.pin, feed.mm2);
};

export const ground: Recipe = (module) => {
  const { loom } = module;
  loom.run(module.pin({ fits: ["ground"], inside: "ground" }), loom.ground(), 2.5);
};

/** The module's only feed comes through an operator's contact. */
export const feedByContact: Recipe = (module) => {
  const { loom } = module;
  const line = eventContact(loom, anyFeed(loom));
  const pin = module.pin({ fits: fedByEvent(module), side: "high", inside: "feed" });
  loom.run(pin, line.pin, line.mm2);
};

/** The module's only ground comes through a contact. */
export const groundByContact: Recipe = (module) => {
  const { loom } = module;
  const line = eventContact(loom, { pin: loom.ground(), mm2: 2.5 });
  const pin = module.pin({ fits: groundedByEvent(module), side: "low", inside: "ground" });
  loom.run(pin, line.pin, line.mm2);
};

const startSignal: Recipe = (module) => {
  const { loom } = module;
  if (loom.start === null) return;
  const line = loom.fused(loom.start);
  // the starter's coil hangs on the same line: the module could be what pulls it
  const fits = ["switched-supply", "input", "output"] as const;
  const pin = module.pin({ fits, side: "high", inside: "input-high" });
  loom.run(pin, line.pin, line.mm2);
};

const highInput: Recipe = (module) => {
  const { loom } = module;
  const line = eventContact(loom, anyFeed(loom));
  const pin = module.pin({ fits: fedByEvent(module), inside: "input-high", side: "high" });
  loom.run(pin, line.pin, line.mm2);
};

const lowInput: Recipe = (module) => {
  const { loom } = module;
  const line = eventContact(loom, { pin: loom.ground(), mm2: 2.5 });
  const pin = module.pin({ fits: groundedByEvent(module), inside: "input-low", side: "low" });
  loom.run(pin, line.pin, line.mm2);
};

const seatFeed: Recipe = (module) => {
  const { loom } = module;
  const line = loom.contact("interlock", anyFeed(loom));
  const pin = module.pin({
    fits: ["switched-supply", "input"],
    side: "high",
    inside: "input-high",
  });
  loom.run(pin, line.pin, line.mm2);
};

const seatGround: Recipe = (module) => {
  const { loom } = module;
  const line = loom.contact("interlock", { pin: loom.ground(), mm2: 2.5 });
  const pin = module.pin({ fits: ["switched-ground", "input"], side: "low", inside: "input-low" });
  loom.run(pin, line.pin, line.mm2);
};

/** Fed through a relay that the key pulls. */
const relayFeed: Recipe = (module) => {
  const { loom } = module;
  const line = relayOn(loom, loom.fused(loom.key));
  const pin = module.pin({ fits: ["switched-supply"], inside: "feed" });
  loom.run(pin, line.pin, line.mm2);
};

/** Told something by a relay that an operator's contact pulls. */
const relayInput: Recipe = (module) => {
  const { loom } = module;
  const line = relayOn(loom, eventContact(loom, loom.fused(loom.key)));
  const pin = module.pin({ fits: fedByEvent(module), inside: "input-high", side: "high" });
  loom.run(pin, line.pin, line.mm2);
};

/** Fed through a relay that the module itself drives: a supply all the same. */
const ownRelayFeed: Recipe = (module) => {
  const { loom } = module;
  const drive = module.pin({ fits: ["output"], side: "high", inside: "output-high" });
  const relay = relayPart(loom);
  loom.run(drive, `${relay}:86`, 2.5);
  loom.run(`${relay}:85`, loom.ground(), 2.5);
  const from = loom.fused(loom.main);
  loom.run(from.pin, `${relay}:30`, from.mm2);
  loom.run(module.pin({ fits: ["supply"], inside: "feed" }), `${relay}:87`, from.mm2);
};

const relayPart = (loom: Loom): string =>
  loom.part("relay", "K", {
    ...(loom.random.chance(0.85) ? { coilOhms: loom.volts === 12 ? 90 : 330 } : {}),
    ...(loom.random.chance(0.2) ? { diodeCathode: "86" } : {}),
  });

/** The closed side of a relay whose coil hangs on a line; it switches a feed that is always live. */
function relayOn(loom: Loom, coil: Line): Line {
  const relay = relayPart(loom);
  loom.run(coil.pin, `${relay}:86`, coil.mm2);
  loom.run(`${relay}:85`, loom.ground(), coil.mm2);
  const from = loom.fused(loom.main);
  loom.run(from.pin, `${relay}:30`, from.mm2);
  return { pin: `${relay}:87`, mm2: from.mm2 };
}

/** An input through a diode, as two switches that share a lamp have. */
const diodeInput: Recipe = (module) => {
  const { loom } = module;
  const line = eventContact(loom, anyFeed(loom));
  const diode = loom.part("diode", "V");
  loom.run(line.pin, `${diode}:A`, line.mm2);
  const pin = module.pin({
    fits: fedByEvent(module),
    inside: "input-high",
    side: "high",
    isOhmic: false,
  });
  loom.run(pin, `${diode}:K`, line.mm2);
};

export const FEED_RECIPES: readonly Recipe[] = [
  batteryFeed,
  keyFeed,
  keyFeed,
  ground,
  startSignal,
  highInput,
  highInput,
  lowInput,
  lowInput,
  seatFeed,
  seatGround,
  relayFeed,
  relayInput,
  ownRelayFeed,
  diodeInput,
];
