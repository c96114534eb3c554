import { describe, expect, test } from "vitest";
import {
  elementsOf,
  KINDS,
  kindOf,
  pinPosition,
  pinsOf,
  strokesOf,
  terminalOf,
} from "../../src/circuit/index.ts";
import { type Part, type PartKindName, partSchema } from "../../src/job/index.ts";

const place = { id: "x", sheet: "s", at: [100, 100], turn: 0 } as const;
const made = (kind: PartKindName, systemVoltage = 24, more: object = {}): Part =>
  ({ ...kindOf(kind).defaults(systemVoltage), ...more, ...place, kind }) as unknown as Part;
const names = Object.keys(KINDS) as PartKindName[];

/** Pins that the job format fixes for each kind. */
const FIXED: Partial<Record<PartKindName, readonly string[]>> = {
  battery: ["+", "-"],
  ground: ["1"],
  fuse: ["1", "2"],
  breaker: ["1", "2"],
  relay: ["85", "86", "30", "87", "87a"],
  lamp: ["1", "2"],
  solenoid: ["1", "2"],
  motor: ["1", "2"],
  heater: ["1", "2"],
  resistor: ["1", "2"],
  horn: ["1", "2"],
  sender: ["1", "2"],
  potentiometer: ["1", "2", "W"],
  sensor: ["+", "-", "S"],
  alternator: ["B+", "D+", "E"],
  converter: ["in+", "in-", "out+", "out-"],
  diode: ["A", "K"],
  splice: ["1"],
  offpage: ["1"],
};

describe.each(names)("%s", (name) => {
  test.each([12, 24, 48])("its defaults at %d V are a part that a job may hold", (volts) => {
    const parsed = partSchema.safeParse({ ...made(name, volts) });
    expect(parsed.success).toBe(true);
  });

  test("has the pins of the job format, each in a place of its own", () => {
    const pins = pinsOf(made(name));
    const fixed = FIXED[name];
    if (fixed) expect(pins.map(({ id }) => id).sort()).toEqual([...fixed].sort());
    expect(new Set(pins.map(({ at }) => at.join())).size).toBe(pins.length);
  });

  test("joins only pins that it has", () => {
    const part = made(name);
    const pins = new Set(pinsOf(part).map(({ id }) => id));
    for (const { a, b, part: owner } of elementsOf(part, 24)) {
      expect(owner).toBe("x");
      expect(pins.has(a) && pins.has(b) && a !== b).toBe(true);
    }
  });

  test("draws something finite, in reach of its pins", () => {
    const part = made(name, 24, name === "module" ? { pins: [{ id: "1" }, { id: "2" }] } : {});
    const strokes = strokesOf(part);
    expect(strokes.length).toBeGreaterThan(0);
    for (const stroke of strokes) {
      const points = stroke.draw === "line" ? stroke.points : [stroke.at];
      for (const [x, y] of points) {
        expect(Math.abs(x)).toBeLessThan(20);
        expect(Math.abs(y)).toBeLessThan(20);
      }
    }
  });
});

test("a part's turn carries its pins along, clockwise", () => {
  const turned = { ...made("fuse"), turn: 90 } as Part;
  expect(pinPosition(turned, "1")).toEqual([100, 70]);
  expect(pinPosition(turned, "2")).toEqual([100, 130]);
  expect(pinPosition(turned, "3")).toBeNull();
});

test("a relay with more poles numbers them 30b, 87b, 87ab", () => {
  const pins = pinsOf(made("relay", 24, { poles: 2 })).map(({ id }) => id);
  expect(pins).toEqual(expect.arrayContaining(["30b", "87b", "87ab"]));
  const contacts = elementsOf(made("relay", 24, { poles: 2 }), 24).filter(
    ({ law }) => law.is === "relay-contact",
  );
  expect(contacts.map(({ a, b }) => `${a}-${b}`)).toEqual([
    "30-87",
    "30-87a",
    "30b-87b",
    "30b-87ab",
  ]);
});

test("a solenoid with pull and hold windings has P, H and E", () => {
  const part = made("solenoid", 24, { ohmsPull: 0.5, ohmsHold: 30 });
  expect(pinsOf(part).map(({ id }) => id)).toEqual(["P", "H", "E"]);
  expect(elementsOf(part, 24).map(({ a, b }) => `${a}-${b}`)).toEqual(["P-E", "H-E"]);
});

test("a solenoid's diode has its cathode at 1, a relay's where it says", () => {
  const [solenoid] = elementsOf(made("solenoid", 24, { diode: true }), 24);
  expect(solenoid).toMatchObject({ a: "1", law: { cathode: "a" } });
  const coil = (diodeCathode: string) =>
    elementsOf(made("relay", 24, { diodeCathode }), 24).find(({ law }) => law.is === "coil");
  expect(coil("86")).toMatchObject({ b: "86", law: { cathode: "b" } });
  expect(coil("85")).toMatchObject({ a: "85", law: { cathode: "a" } });
});

test("a lamp's hot ohms follow from its watts, its cold ones are a tenth", () => {
  const [lamp] = elementsOf(made("lamp", 12, { watts: 21 }), 12);
  // 12 V · 12 V / 21 W
  expect(lamp?.law).toMatchObject({ is: "load", coldOhms: 144 / 210 });
  expect(elementsOf(made("lamp", 12, { led: true }), 12)[0]?.law.is).toBe("led");
});

test("a switch lays each pole's throws beside the pin that they share", () => {
  const key = made("switch", 24, {
    positions: ["off", "run", "start"],
    contacts: [
      { between: ["30", "15"], closedIn: ["run", "start"] },
      { between: ["30", "50"], closedIn: ["start"] },
    ],
  });
  const at = new Map(pinsOf(key).map(({ id, at: point }) => [id, point]));
  expect(at.get("30")?.[0]).toBeLessThan(0);
  expect(at.get("15")?.[0]).toBe(at.get("50")?.[0]);
});

test("spring-return positions are those that it leaves by itself", () => {
  const springs = (springReturn: boolean | string[]) => {
    const [contact] = elementsOf(
      made("switch", 24, { positions: ["off", "run", "start"], springReturn }),
      24,
    );
    return contact?.law.is === "contact" ? contact.law.springPositions : null;
  };
  expect(springs(true)).toEqual(["run", "start"]);
  expect(springs(["start"])).toEqual(["start"]);
  expect(springs(false)).toEqual([]);
});

test("module pins sit where they say, the others along the box's left and right edge", () => {
  const module = made("module", 24, {
    unit: 5,
    size: [100, 60],
    pins: [{ id: "a", at: [50, 10] }, { id: "1" }, { id: "2" }, { id: "3" }],
  });
  const at = new Map(pinsOf(module).map(({ id, at: point }) => [id, point]));
  expect(at.get("a")).toEqual([10, 2]);
  expect([at.get("1")?.[0], at.get("2")?.[0], at.get("3")?.[0]]).toEqual([-10, -10, 10]);
});

test("a module with many pins has a taller box than one with few", () => {
  const height = (count: number) => {
    const pins = Array.from({ length: count }, (_, index) => ({ id: String(index) }));
    const ys = pinsOf(made("module", 24, { pins })).map(({ at }) => at[1]);
    return Math.max(...ys) - Math.min(...ys);
  };
  expect(height(30)).toBeGreaterThan(height(8));
});

test("terminals say what a pin is to the outside", () => {
  const terminal = (kind: PartKindName, pin: string) => terminalOf(made(kind), pin);
  expect(terminal("battery", "+")).toBe("battery-plus");
  expect(terminal("battery", "-")).toBe("battery-minus");
  expect(terminal("ground", "1")).toBe("chassis");
  expect(terminal("sensor", "S")).toBe("sensor-signal");
  expect(terminal("alternator", "D+")).toBe("charge-signal");
  expect(terminal("alternator", "B+")).toBeNull();
  expect(terminal("offpage", "1")).toBe("page-end");
  expect(terminal("fuse", "1")).toBeNull();
});
