import { chassisPlace, type Network, type Terminal, type Way } from "../circuit/index.ts";
import {
  type CavityRef,
  type Id,
  isFixedProbe,
  ownerOf,
  type PinRef,
  type Probe,
  splitRef,
} from "../job/index.ts";
import { pinsOfCavity } from "./cavity-pins.ts";
import { fedNets } from "./feed-nets.ts";
import type { Shared } from "./shared.ts";

/** What the drawing has at a cavity, as far as one fault on it could pass for something present. */
export interface DrawnWay {
  /** Wires alone lead to chassis or battery minus. */
  readonly isGround: boolean;
  /** Wires, fuses and contacts in whatever position lead there. */
  readonly isReturned: boolean;
  /** No load lies between it and battery plus, a charger or a converter, in some state. */
  readonly isFed: boolean;
  /**
   * Something else hangs between the cavity and the other probe: where the way to that probe opens,
   * this may pull the cavity up.
   */
  readonly hasCompany: boolean;
  /** Fewest ohms of a sensor, sender or potentiometer there; 0 where nobody has said; infinite without one. */
  readonly sensorOhms: number;
}

/** The drawing at a cavity as seen by a meter whose other lead is on `other`. */
export const drawnWay = (shared: Shared, cavity: CavityRef, other: Probe): DrawnWay =>
  shared.once(`drawn way ${cavity} ${other}`, () => walk(shared, cavity, other));

const SENSORS: ReadonlySet<string> = new Set(["sensor-plus", "sensor-minus", "sensor-signal"]);

function walk({ job, network }: Shared, cavity: CavityRef, other: Probe): DrawnWay {
  const own = pinsOfCavity(job, cavity);
  const judged = new Set(own.map(ownerOf));
  const isBeyond = endAt(network, other);
  const at = pinsByNet(network);
  const nets = own.flatMap((pin) => network.netOf.get(pin) ?? []);

  let isReturned = false;
  let hasCompany = false;
  let sensorOhms = Number.POSITIVE_INFINITY;
  const seen = new Map<PinRef, Positions[]>();
  const stack: [PinRef, Positions][] = [];
  let steps = 0;
  const go = (pin: PinRef, lies: Positions) => {
    const known = seen.get(pin) ?? [];
    if (known.some((one) => isWider(one, lies))) return;
    seen.set(pin, [...known, lies]);
    stack.push([pin, lies]);
  };
  for (const pin of own) go(pin, new Map());
  for (let next = stack.pop(); next; next = stack.pop()) {
    // past the bound anything may hang on it
    if (++steps > MOST_STEPS) return { ...OPEN, ...sides(network, nets) };
    const [pin, lies] = next;
    const { terminal, ways } = at(pin);
    if (isMinus(terminal)) isReturned = true;
    if (isBeyond(pin) || terminal === "battery-minus") continue;
    if (terminal !== undefined && SENSORS.has(terminal)) sensorOhms = 0;
    const isSomething = terminal !== undefined && terminal !== "chassis";
    if (isSomething && !judged.has(ownerOf(pin))) hasCompany = true;
    for (const { to } of network.hops.get(pin) ?? []) go(to, lies);
    for (const { element, to } of ways) {
      // the module is off: what it does between its pins is off with it
      if (judged.has(element.part)) continue;
      const { law } = element;
      if (law.is === "protection") go(to, lies);
      else if (law.is === "contact" || law.is === "relay-contact") {
        const closedIn = law.is === "contact" ? law.closedIn : [law.closedWhen];
        const closed = narrowed(lies, element.part, closedIn);
        if (closed) go(to, closed);
      } else {
        hasCompany = true;
        if (law.is === "track" || law.is === "wiper")
          sensorOhms = Math.min(sensorOhms, law.unsaid ? 0 : law.ohms);
        if (law.is === "sender") sensorOhms = Math.min(sensorOhms, law.unsaid ? 0 : law.ohmsMin);
      }
    }
  }
  return { isReturned, hasCompany, sensorOhms, ...sides(network, nets) };
}

const MOST_STEPS = 20_000;
const OPEN = { isReturned: true, hasCompany: true, sensorOhms: 0 } as const;

/** By switch and relay, the positions in which the way so far is closed; those not named may lie in any. */
type Positions = ReadonlyMap<Id, readonly string[]>;

/** The same with one more closed contact; null where no position closes all of them. */
function narrowed(lies: Positions, part: Id, closedIn: readonly string[]): Positions | null {
  const before = lies.get(part);
  const left = before ? before.filter((position) => closedIn.includes(position)) : closedIn;
  return left.length === 0 ? null : new Map([...lies, [part, left]]);
}

/** Whether one way is closed wherever the other is. */
const isWider = (one: Positions, other: Positions): boolean =>
  [...one].every(([part, allowed]) => other.get(part)?.every((at) => allowed.includes(at)));

const sides = (network: Network, nets: readonly number[]) => ({
  isGround: nets.some((net) =>
    network.nets[net]?.terminals.some(({ terminal }) => isMinus(terminal)),
  ),
  isFed: nets.some((net) => fedNets(network).has(net)),
});

const isMinus = (terminal: Terminal | undefined): boolean =>
  terminal === "chassis" || terminal === "battery-minus";

interface AtPin {
  readonly terminal: Terminal | undefined;
  readonly ways: readonly Way[];
}

/** What ends at a pin; a net is sorted by its pins when the first of them is asked for. */
function pinsByNet({ nets, netOf }: Network): (pin: PinRef) => AtPin {
  const sorted = new Map<number, Map<PinRef, { terminal: Terminal | undefined; ways: Way[] }>>();
  return (pin) => {
    const id = netOf.get(pin);
    if (id === undefined) return NOTHING;
    let net = sorted.get(id);
    if (!net) {
      net = new Map();
      for (const one of nets[id]?.terminals ?? [])
        net.set(one.pin, { terminal: one.terminal, ways: [] });
      for (const way of nets[id]?.ways ?? []) {
        const known = net.get(way.from);
        if (known) known.ways.push(way);
        else net.set(way.from, { terminal: undefined, ways: [way] });
      }
      sorted.set(id, net);
    }
    return net.get(pin) ?? NOTHING;
  };
}

const NOTHING: AtPin = { terminal: undefined, ways: [] };

/** Whether a pin is the very point that the other lead touches: what hangs there is beyond. */
function endAt({ parts }: Network, other: Probe): (pin: PinRef) => boolean {
  const placeOf = (probe: Probe): string | null => {
    if (probe === "chassis") return "chassis";
    const part = isFixedProbe(probe) ? undefined : parts.get(splitRef(probe).owner);
    return part?.kind === "ground" ? chassisPlace(part) : null;
  };
  const place = placeOf(other);
  return (pin) => pin === other || (place !== null && placeOf(pin) === place);
}
