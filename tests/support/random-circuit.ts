/**
 * Random circuits around a module A1 as a harness might really have them: fused and keyed buses,
 * contacts, relays, loads, plugs, splices and page ends. The same generator state gives the same
 * circuit. No relay holds itself, and nothing but A1 and drawn contacts commands one.
 */
import type { Random } from "../../src/base/index.ts";
import type { Job, PinRef } from "../../src/job/index.ts";
import { type CircuitBuilder, withBattery } from "./circuit-builder.ts";

const MOST_SWITCHES = 6;
/** Relays that A1 drives: each makes one more thing for the oracle to try. */
const MOST_DRIVEN = 2;
const EVENTS = ["operator", "limit", "pressure", "temperature", "level"] as const;
const LOADS = ["lamp", "solenoid", "motor", "heater", "horn"] as const;

export function randomCircuit(random: Random): Job {
  const yard = new Yard(random);
  const pins = 4 + random.below(6);
  for (let n = 1; n <= pins; n++) random.pick(RECIPES)(yard, yard.pin());
  if (random.chance(0.6)) yard.run(yard.pin(), yard.main);
  if (random.chance(0.6)) yard.run(yard.pin(), yard.ground());
  return yard.finish();
}

class Yard {
  readonly random: Random;
  readonly main: PinRef;
  readonly key: PinRef | null = null;
  readonly start: PinRef | null = null;
  /** Lines that a further pin may be tied to. */
  readonly lines: PinRef[] = [];
  private readonly circuit: CircuitBuilder;
  private readonly counts = new Map<string, number>();
  private readonly pins: string[] = [];
  private switches = 0;
  private driven = 0;

  constructor(random: Random) {
    this.random = random;
    this.circuit = withBattery();
    const fuse = this.part("fuse", "F");
    if (random.chance(0.4)) {
      const isolator = this.id("Q");
      this.circuit
        .contact(isolator, "isolator")
        .wire(`G1:+ ${isolator}:1`, `${isolator}:2 ${fuse}:1`);
    } else this.circuit.wire(`G1:+ ${fuse}:1`);
    this.main = `${fuse}:2`;
    if (!random.chance(0.75)) return;
    const key = this.id("S");
    this.switches++;
    this.circuit.key(key);
    this.start = `${key}:50`;
    this.key = `${key}:15`;
    if (random.chance(0.25)) this.run(this.contact("emergency-stop", this.main), `${key}:30`);
    else this.run(this.main, `${key}:30`);
    if (random.chance(0.5)) this.load(this.key, this.ground());
  }

  finish(): Job {
    this.circuit.module("A1", Object.fromEntries(this.pins.map((pin) => [pin, null])));
    return this.circuit.job;
  }

  id(letter: string): string {
    const count = (this.counts.get(letter) ?? (letter === "G" ? 1 : letter === "A" ? 1 : 0)) + 1;
    this.counts.set(letter, count);
    return `${letter}${count}`;
  }

  pin(): PinRef {
    this.pins.push(String(this.pins.length + 1));
    return `A1:${this.pins.length}`;
  }

  part(
    kind: "fuse" | "splice" | "relay" | "sender" | (typeof LOADS)[number],
    letter: string,
  ): string {
    const id = this.id(letter);
    this.circuit.part(kind, id);
    return id;
  }

  /** A wire, by way of whatever a loom may have on the way that changes nothing. */
  run(from: PinRef, to: PinRef): void {
    switch (this.random.below(8)) {
      case 0: {
        const splice = this.part("splice", "SP");
        this.circuit.wire(`${from} ${splice}:1 ${to}`);
        break;
      }
      case 1: {
        const plug = this.id("XI");
        this.circuit.part("inline", plug, { pins: [{ id: "1" }, { id: "2" }] });
        const pin = this.random.pick(["1", "2"]);
        this.circuit.wire(`${from} ${plug}:${pin}`, `${plug}:${pin} ${to}`);
        break;
      }
      case 2: {
        const [here, there] = [this.id("XP"), this.id("XP")];
        this.circuit
          .part("offpage", here, { label: `to ${here}` })
          .part("offpage", there, { label: ` TO ${here}` })
          .wire(`${from} ${here}:1`, `${there}:1 ${to}`);
        break;
      }
      default:
        this.circuit.wire(`${from} ${to}`);
    }
  }

  fused(from: PinRef): PinRef {
    const fuse = this.part("fuse", "F");
    this.run(from, `${fuse}:1`);
    return `${fuse}:2`;
  }

  ground(): PinRef {
    if (this.random.chance(0.5)) return "GND1:1";
    const id = this.id("GN");
    this.circuit.part("ground", id, this.random.chance(0.5) ? { place: "Frame " } : {});
    return `${id}:1`;
  }

  bus(): PinRef {
    const bus = this.key !== null && this.random.chance(0.5) ? this.key : this.main;
    return this.random.chance(0.3) ? this.fused(bus) : bus;
  }

  rail(): PinRef {
    return this.random.chance(0.5) ? this.bus() : this.ground();
  }

  /** The far side of a new contact on a line; the line itself once there are switches enough. */
  contact(control: "interlock" | "emergency-stop" | (typeof EVENTS)[number], line: PinRef): PinRef {
    if (this.switches >= MOST_SWITCHES) return line;
    this.switches++;
    const id = this.id("S");
    const closedIn = this.random.pick(["rest", "worked"]);
    this.circuit.contact(id, control, {
      contacts: [{ between: ["1", "2"], closedIn: [closedIn] }],
    });
    this.run(line, `${id}:1`);
    return `${id}:2`;
  }

  /** `common` goes to `a` in one position and to `b` in another, in a third perhaps to neither. */
  changeover(common: PinRef, a: PinRef, b: PinRef): void {
    if (this.switches >= MOST_SWITCHES) return;
    this.switches++;
    const id = this.id("S");
    this.circuit.part("switch", id, {
      positions: this.random.chance(0.3) ? ["left", "off", "right"] : ["left", "right"],
      control: this.random.pick([...EVENTS, "interlock"]),
      contacts: [
        { between: ["1", "2"], closedIn: ["left"] },
        { between: ["1", "3"], closedIn: ["right"] },
      ],
    });
    this.run(common, `${id}:1`);
    this.run(a, `${id}:2`);
    this.run(b, `${id}:3`);
  }

  /** A contact of some kind, or several in series. */
  switched(line: PinRef): PinRef {
    const near = this.contact(this.random.pick([...EVENTS, "interlock"]), line);
    return this.random.chance(0.2) ? this.contact(this.random.pick(EVENTS), near) : near;
  }

  load(from: PinRef, to: PinRef): void {
    const load = this.part(this.random.pick(LOADS), "E");
    const [near, far] = this.random.chance(0.5) ? ["1", "2"] : ["2", "1"];
    this.run(from, `${load}:${near}`);
    this.run(`${load}:${far}`, to);
    if (this.random.chance(0.2)) {
      const diode = this.id("V");
      // Cathode at whichever end is fed is not known here; either way it joins no two buses by itself.
      if (to.startsWith("G"))
        this.circuit
          .part("diode", diode)
          .wire(`${load}:${far} ${diode}:A`, `${diode}:K ${load}:${near}`);
    }
  }

  sender(from: PinRef): void {
    const sender = this.part("sender", "B");
    this.run(from, `${sender}:1`);
    this.run(`${sender}:2`, this.ground());
  }

  other(from: PinRef): void {
    const id = this.id("A");
    this.circuit.module(id, { "7": null });
    this.run(from, `${id}:7`);
  }

  untraced(from: PinRef): void {
    const id = this.id("XU");
    this.circuit.part("offpage", id, this.random.chance(0.5) ? { label: `page ${id}` } : {});
    this.run(from, `${id}:1`);
  }

  /** The switched side of a relay that the key, an event or A1 itself commands. */
  relay(): PinRef {
    const relay = this.part("relay", "K");
    const [one, two] = this.random.chance(0.5) ? ["85", "86"] : ["86", "85"];
    const coil = this.random.below(4);
    if (coil === 0 && this.driven < MOST_DRIVEN) {
      this.driven++;
      this.run(this.pin(), `${relay}:${one}`);
      this.run(this.rail(), `${relay}:${two}`);
    } else if (coil === 1) {
      this.run(this.switched(this.bus()), `${relay}:${one}`);
      this.run(this.ground(), `${relay}:${two}`);
    } else if (coil === 2) {
      this.run(this.bus(), `${relay}:${one}`);
      this.run(this.switched(this.ground()), `${relay}:${two}`);
    } else {
      this.run(this.random.pick([this.key, this.start, this.main]) ?? this.main, `${relay}:${one}`);
      this.run(this.ground(), `${relay}:${two}`);
    }
    this.run(this.random.chance(0.8) ? this.bus() : this.ground(), `${relay}:30`);
    return `${relay}:${this.random.chance(0.75) ? "87" : "87a"}`;
  }
}

/** What may be at the other end of a pin's wire. */
const RECIPES: readonly ((yard: Yard, pin: PinRef) => void)[] = [
  (yard, pin) => yard.run(pin, yard.bus()),
  (yard, pin) => yard.run(pin, yard.ground()),
  (yard, pin) => yard.run(pin, yard.start ?? yard.fused(yard.main)),
  (yard, pin) => {
    const line = yard.switched(yard.rail());
    yard.lines.push(line);
    yard.run(pin, line);
  },
  (yard, pin) => yard.run(pin, yard.switched(yard.bus())),
  (yard, pin) => yard.run(pin, yard.contact("interlock", yard.bus())),
  (yard, pin) => {
    const line = yard.relay();
    yard.lines.push(line);
    yard.run(pin, line);
  },
  (yard, pin) => yard.changeover(yard.bus(), pin, yard.pin()),
  (yard, pin) => yard.changeover(pin, yard.rail(), yard.rail()),
  (yard, pin) => {
    // Two contacts side by side.
    const rail = yard.rail();
    yard.run(pin, yard.switched(rail));
    yard.run(pin, yard.switched(rail));
  },
  (yard, pin) => {
    const rail = yard.rail();
    for (let n = 1 + yard.random.below(3); n > 0; n--) yard.load(pin, rail);
  },
  (yard, pin) => yard.load(pin, yard.random.chance(0.5) ? yard.ground() : yard.bus()),
  (yard, pin) => yard.load(yard.switched(pin), yard.rail()),
  (yard, pin) => yard.load(pin, yard.switched(yard.rail())),
  (yard, pin) => yard.load(pin, yard.relay()),
  (yard, pin) => yard.load(pin, yard.pin()),
  (yard, pin) => {
    // A switch's wire that also lights a lamp.
    yard.run(pin, yard.switched(yard.rail()));
    yard.load(pin, yard.rail());
  },
  (yard, pin) => yard.sender(pin),
  (yard, pin) => yard.other(pin),
  (yard, pin) => {
    yard.load(pin, yard.rail());
    yard.other(pin);
  },
  (yard, pin) => {
    yard.run(pin, yard.switched(yard.rail()));
    yard.other(pin);
  },
  (yard, pin) => yard.untraced(pin),
  (yard, pin) => {
    yard.run(pin, yard.switched(yard.rail()));
    if (yard.random.chance(0.3)) yard.untraced(pin);
  },
  (yard, pin) => {
    if (yard.lines.length > 0) yard.run(pin, yard.random.pick(yard.lines));
  },
  (yard, pin) => {
    if (yard.lines.length > 0) yard.load(pin, yard.random.pick(yard.lines));
  },
  () => {},
];
