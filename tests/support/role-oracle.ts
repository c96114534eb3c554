/**
 * What a module's pins may be, found the slow and obvious way: every position of every switch is
 * tried in turn, the wires are flooded, and the truth table is read. It shares no code with the
 * inference under test beyond the declarations of what each kind of part is made of. It knows
 * feeds, grounds, contacts, relays that neither latch nor hold themselves, loads, senders, other
 * modules and page ends; sensors, potentiometers and plain resistors are not its trade.
 */
import { type Element, elementsOf, pinsOf } from "../../src/circuit/index.ts";
import {
  type Job,
  type PartOf,
  type PinRef,
  pinRef,
  ROLE_NAMES,
  type RoleName,
} from "../../src/job/index.ts";

type Node = number;

/** Something that is tried in each of its values. */
interface Choice {
  readonly id: string;
  readonly values: readonly string[];
  readonly part: PartOf<"switch"> | null;
}

/** One value a choice, in the order of the choices. */
type State = readonly number[];

/** Allowed values, one list a choice. */
type Block = readonly (readonly number[])[];

interface Join {
  readonly element: Element;
  readonly a: Node;
  readonly b: Node;
}

/** Circuits with more states than this would take the oracle too long. */
const MOST_STATES = 150;

/** Null for a circuit with too many states to try, or with a relay that holds itself or chatters. */
export function oracleFits(
  job: Job,
  moduleId: string,
): ReadonlyMap<PinRef, readonly RoleName[]> | null {
  const bare = tabulate(job, moduleId, []);
  if (!bare) return null;
  const driving = bare.ownPins.filter(
    (pin) => !bare.isBus(bare.nodeOf(pin)) && bare.meetsCoil(pin),
  );
  const table = driving.length === 0 ? bare : tabulate(job, moduleId, driving, bare.isBus);
  return table && judge(job, moduleId, table);
}

type Table = NonNullable<ReturnType<typeof tabulate>>;

/** Floods the circuit in every state. `driving`: pins of the module tried open, high and low. */
function tabulate(
  job: Job,
  moduleId: string,
  driving: readonly PinRef[],
  isHeld: (node: Node) => boolean = () => false,
) {
  const nodes = mergeWires(job);
  const nodeOf = (pin: PinRef): Node => {
    const node = nodes.get(pin);
    if (node === undefined) throw new Error(`no such pin: ${pin}`);
    return node;
  };
  const parts = job.diagram.parts;
  const joins: Join[] = parts.flatMap((part) =>
    elementsOf(part, job.systemVoltage).map((element) => ({
      element,
      a: nodeOf(pinRef(part.id, element.a)),
      b: nodeOf(pinRef(part.id, element.b)),
    })),
  );
  const live = new Set<Node>();
  const earth = new Set<Node>();
  for (const part of parts) {
    if (part.kind === "battery") {
      live.add(nodeOf(`${part.id}:+`));
      earth.add(nodeOf(`${part.id}:-`));
    }
    if (part.kind === "ground") earth.add(nodeOf(`${part.id}:1`));
  }
  const choices: Choice[] = [
    ...parts
      .filter((part) => part.kind === "switch" && part.control !== "isolator")
      .map((part): Choice => {
        const drawn = part as PartOf<"switch">;
        return { id: part.id, values: drawn.positions, part: drawn };
      }),
    ...driving.map((pin): Choice => ({ id: pin, values: ["open", "high", "low"], part: null })),
  ];
  if (choices.reduce((count, choice) => count * choice.values.length, 1) > MOST_STATES) return null;
  const states = everyState(choices);
  const coils = joins.filter((join) => join.element.law.is === "coil");

  const conducts = ({ element }: Join, state: State, pulled: ReadonlySet<string>): boolean => {
    const { law } = element;
    if (law.is === "protection" || law.is === "diode") return true;
    if (law.is === "relay-contact")
      return pulled.has(element.part) === (law.closedWhen === "pulled");
    if (law.is !== "contact") return false;
    if (law.control === "isolator") return true;
    const index = choices.findIndex((choice) => choice.id === element.part);
    return law.closedIn.includes(choices[index]?.values[state[index] ?? 0] ?? "");
  };

  /** Nodes that current can run to from the seeds (downstream), or from which it runs to them. */
  const flood = (
    seeds: Iterable<Node>,
    closed: readonly Join[],
    downstream: boolean,
    stop: (node: Node) => boolean,
  ): ReadonlySet<Node> => {
    const reached = new Set(seeds);
    const queue = [...reached];
    for (const node of queue) {
      if (stop(node)) continue;
      for (const { element, a, b } of closed) {
        const oneWay = element.law.is === "diode";
        const next: Node[] = [];
        if (node === a && (!oneWay || downstream)) next.push(b);
        if (node === b && (!oneWay || !downstream)) next.push(a);
        for (const far of next) {
          if (reached.has(far)) continue;
          reached.add(far);
          queue.push(far);
        }
      }
    }
    return reached;
  };

  const settle = (state: State) => {
    const held = (level: number) =>
      driving.filter((_, index) => state[choices.length - driving.length + index] === level);
    const high = held(1).map(nodeOf);
    const low = held(2).map(nodeOf);
    let pulled: ReadonlySet<string> = new Set();
    // Relays command one another at most once round: as many rounds as there are coils settle it.
    for (let round = 0; ; round++) {
      const closed = joins.filter((join) => conducts(join, state, pulled));
      const fed = flood([...live], closed, true, (node) => earth.has(node));
      const grounded = flood([...earth], closed, false, (node) => live.has(node));
      // A pin of the module moves no bus, nor anything beyond one.
      const moved = (pins: readonly Node[], downstream: boolean) =>
        [...flood(pins, closed, downstream, isHeld)].filter((node) => !isHeld(node));
      const hot = new Set([...fed, ...moved(high, true)]);
      const cold = new Set([...grounded, ...moved(low, false)]);
      const next = new Set(
        coils
          .filter(({ a, b }) => (hot.has(a) && cold.has(b)) || (hot.has(b) && cold.has(a)))
          .map(({ element }) => element.part),
      );
      if (next.size === pulled.size && [...next].every((relay) => pulled.has(relay)))
        return { state, closed, fed, grounded };
      if (round > coils.length) return null;
      pulled = next;
    }
  };
  const settled = states.map(settle);
  const rows = settled.filter((row) => row !== null);
  if (rows.length < settled.length) return null;

  const blocksKnown = new Map<string, readonly Block[]>();
  const blocksFor = (node: Node, rail: "fed" | "grounded", pin: PinRef | null) => {
    const own = choices.findIndex((choice) => choice.id === pin);
    const among = own < 0 ? rows : rows.filter((row) => row.state[own] === 0);
    // Many nodes behave alike: each pattern is worked out once.
    const pattern = `${own} ${among.map((row) => Number(row[rail].has(node))).join("")}`;
    let blocks = blocksKnown.get(pattern);
    if (!blocks) {
      const table = new Map(among.map((row) => [row.state.join(), row[rail].has(node)]));
      blocks = mostGeneralBlocks(choices, table, own);
      blocksKnown.set(pattern, blocks);
    }
    return blocks;
  };
  const busKnown = new Map<Node, boolean>();
  const isBus = (node: Node): boolean => {
    const known = busKnown.get(node);
    if (known !== undefined) return known;
    const answer =
      blocksFor(node, "fed", null).some((block) => isPlain(commandsOf(choices, block))) ||
      blocksFor(node, "grounded", null).some((block) => commandsOf(choices, block).size === 0);
    busKnown.set(node, answer);
    return answer;
  };
  const module = parts.find((part) => part.id === moduleId);
  const ownPins = module ? pinsOf(module).map((pin) => pinRef(moduleId, pin.id)) : [];
  /** Whether any state of the switches ties a pin to an end of a coil. */
  const meetsCoil = (pin: PinRef) => {
    const passing = joins.filter(({ element: { law } }) =>
      ["protection", "diode", "contact", "relay-contact"].includes(law.is),
    );
    const stop = (node: Node) => live.has(node) || earth.has(node);
    return [true, false].some((downstream) => {
      const reached = flood([nodeOf(pin)], passing, downstream, stop);
      return coils.some(({ a, b }) => reached.has(a) || reached.has(b));
    });
  };
  return { nodes, nodeOf, joins, choices, rows, flood, blocksFor, isBus, ownPins, meetsCoil };
}

function judge(job: Job, moduleId: string, table: Table): ReadonlyMap<PinRef, readonly RoleName[]> {
  const { ownPins, nodeOf, blocksFor, choices } = table;
  const railsOf = (pin: PinRef, rail: "fed" | "grounded") =>
    blocksFor(nodeOf(pin), rail, pin).map((block) => commandsOf(choices, block));
  const views = ownPins.map((pin) => ({
    pin,
    fed: railsOf(pin, "fed"),
    grounded: railsOf(pin, "grounded"),
  }));
  const feeds = views.filter((view) => view.fed.some(isPlain)).map((view) => view.pin);
  const grounds = views
    .filter((view) => view.grounded.some((by) => by.size === 0))
    .map((view) => view.pin);
  const fits = new Map<PinRef, readonly RoleName[]>();
  for (const { pin, fed, grounded } of views) {
    const roles = new Set<RoleName>();
    const otherFeed = feeds.some((feed) => feed !== pin);
    const otherGround = grounds.some((ground) => ground !== pin);
    for (const by of fed) {
      if (by.size === 0) roles.add("supply");
      else if (isPlain(by)) roles.add("switched-supply");
      else {
        roles.add("input");
        if (!by.has("event") || !otherFeed) roles.add("switched-supply");
      }
    }
    for (const by of grounded) {
      if (by.size === 0) {
        roles.add("ground");
        if (otherGround) roles.add("input");
      } else {
        roles.add("input");
        if (!otherGround || (by.has("interlock") && !by.has("event"))) roles.add("switched-ground");
      }
    }
    if (!feeds.includes(pin) && !grounds.includes(pin)) addOthers(job, moduleId, table, pin, roles);
    fits.set(pin, roles.size === 0 ? ["unused"] : ROLE_NAMES.filter((role) => roles.has(role)));
  }
  return fits;
}

/** Adds what hangs on a pin's line, in any state, up to the buses that it can be switched to. */
function addOthers(
  job: Job,
  moduleId: string,
  { nodeOf, nodes, joins, rows, flood, isBus }: Table,
  pin: PinRef,
  roles: Set<RoleName>,
): void {
  const home = nodeOf(pin);
  const line = new Set<Node>();
  let load = false;
  let sender = false;
  for (const { closed } of rows) {
    for (const downstream of [true, false]) {
      const near = flood([home], closed, downstream, (node) => node !== home && isBus(node));
      for (const node of near) {
        if (node !== home && isBus(node)) continue;
        line.add(node);
        for (const { element, a, b } of joins) {
          if (a !== node && b !== node) continue;
          // Bridged by a closed contact, a load is nothing to this pin.
          if (near.has(a) && near.has(b)) continue;
          const { is } = element.law;
          if (is === "load" || is === "coil") load = true;
          if (is === "led" && (a === node) === downstream) load = true;
          if (is === "sender") sender = true;
        }
      }
    }
  }
  const onLine = (ref: PinRef) => line.has(nodes.get(ref) ?? -1);
  const open = openPageEnds(job).some(onLine);
  const others = job.diagram.parts
    .filter((part) => part.kind === "module" && part.id !== moduleId)
    .some((part) => pinsOf(part).some((one) => onLine(pinRef(part.id, one.id))));
  const contact = joins.some(({ element: { law }, a, b }) => {
    const isSwitch = law.is === "contact" && law.control !== "isolator";
    return (isSwitch || law.is === "relay-contact") && (line.has(a) || line.has(b));
  });
  if (open) for (const role of ROLE_NAMES) if (role !== "unused") roles.add(role);
  if (load) roles.add("output");
  if (sender) roles.add("input");
  if (others && load) roles.add("input");
  if (others && roles.size === 0) roles.add("signal");
  // The published page has no row for two pins of one module that are wired together and to
  // nothing else: a strap can code, or carry anything between them. This is the engine's choice.
  const module = job.diagram.parts.find((part) => part.id === moduleId);
  const strapped = (module ? pinsOf(module) : []).some((one) => {
    const other = pinRef(moduleId, one.id);
    return other !== pin && nodes.get(other) === home;
  });
  if (strapped && roles.size === 0) {
    for (const role of STRAP) roles.add(role);
  }
  if (contact && roles.size === 0) roles.add("input");
}

const STRAP: readonly RoleName[] = ["input", "output", "sensor-supply", "sensor-ground", "signal"];

/** Page ends without a label, and those that no other has the label of. */
function openPageEnds(job: Job): readonly PinRef[] {
  const ends = job.diagram.parts.filter((part) => part.kind === "offpage");
  const label = (part: PartOf<"offpage">) => (part.label ?? "").trim().toLowerCase();
  return ends
    .filter(
      (end) => !ends.some((other) => other !== end && label(end) && label(other) === label(end)),
    )
    .map((end) => `${end.id}:1`);
}

function mergeWires(job: Job): ReadonlyMap<PinRef, Node> {
  const { parts, wires } = job.diagram;
  const nodes = new Map<PinRef, Node>();
  for (const part of parts)
    for (const pin of pinsOf(part)) nodes.set(pinRef(part.id, pin.id), nodes.size);
  const merge = (from: PinRef, to: PinRef) => {
    const kept = nodes.get(from);
    const gone = nodes.get(to);
    if (kept === undefined || gone === undefined) throw new Error(`no such pin: ${from} or ${to}`);
    for (const [pin, node] of nodes) if (node === gone) nodes.set(pin, kept);
  };
  for (const wire of wires) merge(wire.from, wire.to);
  const called = new Map<string, PinRef>();
  for (const part of parts) {
    if (part.kind !== "ground" && part.kind !== "offpage") continue;
    const place = part.kind === "ground" ? (part.place ?? "frame") : (part.label ?? part.id);
    const name = `${part.kind} ${place.trim().toLowerCase()}`;
    const first = called.get(name);
    if (first === undefined) called.set(name, `${part.id}:1`);
    else merge(first, `${part.id}:1`);
  }
  return nodes;
}

function everyState(choices: readonly Choice[]): readonly State[] {
  let states: State[] = [[]];
  for (const { values } of choices) {
    states = states.flatMap((state) => values.map((_, value) => [...state, value]));
  }
  return states;
}

/** Every block of states, all of which are true in the table, that fits into no larger such block. */
function mostGeneralBlocks(
  choices: readonly Choice[],
  table: ReadonlyMap<string, boolean>,
  fixed: number,
): readonly Block[] {
  const all = choices.map(({ values }, index) => (index === fixed ? [0] : values.map((_, v) => v)));
  if (![...table.values()].includes(true)) return [];
  const isTrue = (state: State) => table.get(state.join()) === true;
  // A choice that never matters stays wide open: that changes no answer and saves the search.
  const matters = choices.map((_, index) =>
    [...table].some(([key, value]) => {
      const state = key.split(",").map(Number);
      return (all[index] ?? []).some((v) => isTrue(state.with(index, v)) !== value);
    }),
  );
  let blocks: Block[] = [[]];
  choices.forEach((_, index) => {
    const values = all[index] ?? [];
    const options = matters[index] ? subsets(values) : [values];
    blocks = blocks.flatMap((block) => options.map((option) => [...block, option]));
  });
  const first = (values: readonly number[], index: number) =>
    matters[index] ? values : values.slice(0, 1);
  const within = blocks.filter((block) => product(block.map(first)).every(isTrue));
  const inside = (small: Block, large: Block) =>
    small.every((values, index) => values.every((value) => large[index]?.includes(value)));
  return within.filter((block) => !within.some((other) => other !== block && inside(block, other)));
}

const subsets = (values: readonly number[]): readonly (readonly number[])[] =>
  Array.from({ length: 2 ** values.length - 1 }, (_, bits) =>
    values.filter((_, index) => ((bits + 1) >> index) & 1),
  );

const product = (lists: Block): readonly State[] =>
  lists.reduce<State[]>((sofar, list) => sofar.flatMap((s) => list.map((v) => [...s, v])), [[]]);

type By = "key" | "spring" | "interlock" | "event";

/** What commands a block: the choices that it does not leave wide open. */
function commandsOf(choices: readonly Choice[], block: Block): ReadonlySet<By> {
  const by = new Set<By>();
  choices.forEach(({ part, values }, index) => {
    const allowed = (block[index] ?? []).map((value) => values[value] ?? "");
    if (!part || allowed.length === values.length) return;
    const springs = Array.isArray(part.springReturn)
      ? part.springReturn
      : part.springReturn
        ? part.positions.filter((position) => position !== (part.rest ?? part.positions[0]))
        : [];
    if (part.control === "interlock") by.add("interlock");
    else if (part.control !== "key" && part.control !== "emergency-stop") by.add("event");
    else by.add(allowed.every((position) => springs.includes(position)) ? "spring" : "key");
  });
  return by;
}

const isPlain = (by: ReadonlySet<By>) => [...by].every((one) => one === "key");
