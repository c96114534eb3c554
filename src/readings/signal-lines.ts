import type { Network, PinTerminal } from "../circuit/index.ts";
import { isFixedProbe, type PinRef, type Probe, type RoleName, splitRef } from "../job/index.ts";
import { printedWord } from "../roles/index.ts";
import { feedNets } from "./feed-nets.ts";
import type { ReadingSetup } from "./prediction.ts";
import type { Shared } from "./shared.ts";
import { netsByWire } from "./wire-nets.ts";

/** What is to be said of a test lamp at the points where it would be held. */
export interface LampVerdict {
  /** Why it must not be held there, one sentence; null where it may. */
  readonly refused: string | null;
  /** What speaks against it without proving it wrong, one sentence; null when nothing. */
  readonly caution: string | null;
}

const MAY: LampVerdict = { refused: null, caution: null };

/**
 * A test lamp draws a hundred times what a sensor's line carries: it can ruin a sender, a wiper or
 * a module's pin, and upsets a data line. Refused where something of that kind is on the line as it
 * stands for the reading; of a bare wire, or of a line that only a word says it of, only a caution.
 */
export function testLampAt(
  shared: Shared,
  { red, black, when }: Pick<ReadingSetup, "red" | "black" | "when">,
): LampVerdict {
  let caution: string | null = null;
  for (const probe of [red, black]) {
    const line = lineAt(shared, probe);
    const [any] = line ?? [];
    if (!line || !any) continue;
    const { wiring } = shared.bench(when);
    const nets = netsByWire(wiring);
    const at = wiring.probe(probe);
    const isThere = ({ pin }: Delicate) => {
      const own = wiring.probe(pin, "own");
      return at.ok && own.ok && nets[at.node] === nets[own.node];
    };
    const first = line.find(isThere);
    if (first?.isSure) return { refused: sentence(probe, first.what), caution: null };
    caution ??= cautionOn(probe, first ?? any, first !== undefined);
  }
  return caution === null ? MAY : { refused: null, caution };
}

const sentence = (probe: Probe, what: string) =>
  `No test lamp at ${probe}: ${what}, and a lamp’s current can ruin what hangs on it; use the meter alone.`;

const cautionOn = (probe: Probe, { what, isSure }: Delicate, isThere: boolean) =>
  isThere
    ? `${probe} may be a signal line: ${what}. Be sure that it is none before a test lamp touches it.`
    : `${probe} ${isSure ? "is" : "may be"} a signal line when all is plugged in: ${what}. A test lamp only while nothing is on it.`;

/** Something on a line that takes no lamp. */
interface Delicate {
  readonly pin: PinRef;
  /** End of a sentence, e.g. `sensor B1 is on this line`. */
  readonly what: string;
  readonly isSure: boolean;
}

/** Pins on the probe's own line that take no lamp; null where the line is a feed or a ground. */
function lineAt(shared: Shared, probe: Probe): readonly Delicate[] | null {
  if (isFixedProbe(probe)) return null;
  const { network, job } = shared;
  const pin = job.links.find(({ cavity }) => cavity === probe)?.pin ?? probe;
  const net = network.netOf.get(pin);
  if (net === undefined) return null;
  return shared.once(`delicate ${net}`, () => ({ found: delicateOn(shared, net) })).found;
}

const RAILS: ReadonlySet<PinTerminal["terminal"]> = new Set([
  "battery-plus",
  "battery-minus",
  "chassis",
]);

const SIGNAL_ROLES: ReadonlySet<RoleName> = new Set(["signal", "sensor-supply", "sensor-ground"]);

function delicateOn(shared: Shared, net: number): readonly Delicate[] | null {
  const { network } = shared;
  const own = network.nets[net];
  if (!own || own.terminals.some(({ terminal }) => RAILS.has(terminal))) return null;
  const found: Delicate[] = [];
  const add = (pin: PinRef, what: string, isSure = true) => found.push({ pin, what, isSure });
  for (const { element, from } of own.ways) {
    const { part, law } = element;
    if (law.is === "sender") add(from, `sender ${part} is on this line`);
    if (law.is === "track" || law.is === "wiper")
      add(from, `potentiometer ${part} is on this line`);
    if (law.is === "source" && network.parts.get(part)?.kind === "module")
      add(from, `${part} feeds it for a sensor`);
  }
  const modulePins: PinTerminal[] = [];
  for (const terminal of own.terminals) {
    const { pin, part } = terminal;
    if (terminal.terminal.startsWith("sensor-")) add(pin, `sensor ${part.id} is on this line`);
    if (terminal.terminal === "module") modulePins.push(terminal);
    if (part.kind === "offpage" && part.is !== undefined && SIGNAL_ROLES.has(part.is))
      add(pin, `page end ${part.id} is marked as a sensor’s or signal line`);
  }
  const owners = new Set(modulePins.map(({ part }) => part.id));
  const words = modulePins.map((terminal) => wordAt(shared, terminal));
  if (owners.size > 1 && own.ways.every(({ element }) => owners.has(element.part))) {
    // one module may well feed another: only where nothing says so is it sure
    const isSure = words.every((word) => word === null || word.isSignal) && own.ways.length === 0;
    const names = [...owners].join(" to ");
    for (const { pin } of modulePins) add(pin, `it runs from module ${names} only`, isSure);
  }
  modulePins.forEach(({ pin }, index) => {
    const word = words[index];
    if (word?.isSignal) add(pin, `the diagram prints “${word.text}” there`, false);
  });
  if (found.length === 0) return found;
  // a feed through fuses and contacts that a sensor only taps carries a lamp with ease
  if (!feedNets(network).has(net)) return [...found].sort(sureFirst);
  return isFedWithoutContact(network, net) ? null : found.map((one) => ({ ...one, isSure: false }));
}

const sureFirst = (a: Delicate, b: Delicate) => Number(b.isSure) - Number(a.isSure);

/** What the diagram's word at a module's pin means; null where it says nothing. */
function wordAt({ job }: Shared, { pin, part }: PinTerminal) {
  const own = part.kind === "module" ? part.pins.find(({ id }) => id === splitRef(pin).name) : null;
  if (!own || part.kind !== "module") return null;
  const isPower = part.power?.supply.includes(own.id) || part.power?.ground.includes(own.id);
  if (isPower) return { text: "", isSignal: false };
  const { text, meanings } = printedWord(own, job.words);
  if (meanings.length === 0) return null;
  return { text, isSignal: meanings.every(({ role }) => SIGNAL_ROLES.has(role)) };
}

/** Whether battery plus reaches it by fuses and breakers alone, or through a key or isolator. */
function isFedWithoutContact(network: Network, net: number): boolean {
  const seen = new Set([net]);
  const stack = [net];
  for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
    const own = network.nets[at];
    if (own?.terminals.some(({ terminal }) => terminal === "battery-plus")) return true;
    for (const { element, far } of own?.ways ?? []) {
      const { law } = element;
      const feeds =
        law.is === "protection" ||
        (law.is === "contact" && (law.control === "key" || law.control === "isolator"));
      if (!feeds || seen.has(far)) continue;
      seen.add(far);
      stack.push(far);
    }
  }
  return false;
}
