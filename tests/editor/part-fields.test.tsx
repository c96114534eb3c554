import { act } from "react";
import { describe, expect, test } from "vitest";
import { kindOf } from "../../src/circuit/index.ts";
import { TipProvider } from "../../src/editor/app/controls/index.ts";
import { PartDetails } from "../../src/editor/boards/diagram/index.ts";
import {
  PART_KINDS,
  type Part,
  type PartKindName,
  type PartOf,
  partSchema,
} from "../../src/job/index.ts";
import { createSession, type Session } from "../../src/session/index.ts";
import { drawing, found } from "../session/diagram/drawing.ts";
import { choose, commit, press, show } from "./support/screen.tsx";

/** A session with one part at its defaults, chosen. */
function opened(kind: PartKindName, more: object = {}): Session {
  const part = { ...kindOf(kind).defaults(24), ...more, id: "X", kind };
  const session = createSession("k", drawing([part as never]));
  session.show({ selection: ["X"], sheet: "s1" });
  return session;
}

const details = (session: Session) =>
  show(
    session,
    <TipProvider>
      <PartDetails />
    </TipProvider>,
  );

const part = <K extends PartKindName>(session: Session) =>
  found(session.get().job.diagram.parts, "X") as PartOf<K>;

function field<T extends HTMLElement = HTMLInputElement>(page: HTMLElement, name: string): T {
  const label = [...page.querySelectorAll("label")].find((one) => one.textContent?.trim() === name);
  const target = label?.htmlFor
    ? document.getElementById(label.htmlFor)
    : label?.querySelector("input");
  if (!target) throw new Error(`no field ${name}: ${page.textContent}`);
  return target as unknown as T;
}

type Typed = readonly [
  kind: PartKindName,
  label: string,
  typed: string | boolean,
  field: string,
  value: unknown,
];

/** Every field of the kinds that have only plain ones, as typed, and as it is then stored. */
const PLAIN: readonly Typed[] = [
  ["battery", "Volts at rest", "24,8 V", "volts", 24.8],
  ["battery", "Inner resistance", "0.02", "ohms", 0.02],
  ["ground", "Grounded on", "engine", "place", "engine"],
  ["fuse", "Rating", "15", "amps", 15],
  ["breaker", "Rating", "20 A", "amps", 20],
  ["relay", "Coil", "300", "coilOhms", 300],
  ["relay", "Diode's cathode at", "86", "diodeCathode", "86"],
  ["relay", "Resistor across the coil", "1k5", "coilResistor", 1500],
  ["relay", "Pulls in at", "60 %", "pullIn", 0.6],
  ["relay", "Drops out at", "15", "dropOut", 0.15],
  ["relay", "Contacts carry", "30", "contactAmps", 30],
  ["relay", "Contact sets", "2", "poles", 2],
  ["relay", "Stays as the last pulse put it", true, "latching", true],
  ["lamp", "Power", "55 W", "watts", 55],
  ["lamp", "LED (1 is its anode)", true, "led", true],
  ["solenoid", "Resistance", "28", "ohms", 28],
  ["solenoid", "Diode, cathode at 1", true, "diode", true],
  ["solenoid", "Pull winding", "0,6", "ohmsPull", 0.6],
  ["solenoid", "Hold winding", "40", "ohmsHold", 40],
  ["motor", "Resistance", "2", "ohms", 2],
  ["heater", "Resistance", "2", "ohms", 2],
  ["horn", "Resistance", "2", "ohms", 2],
  ["resistor", "Resistance", "4k7", "ohms", 4700],
  ["sender", "Least", "3", "ohmsMin", 3],
  ["sender", "Most", "200", "ohmsMax", 200],
  ["potentiometer", "Track", "2k", "ohms", 2000],
  ["sensor", "Output", "npn", "output", "npn"],
  ["sensor", "Signal up to", "5 V", "volts", 5],
  ["alternator", "Inner resistance", "0.05", "ohms", 0.05],
  ["converter", "Gives out", "5", "outVolts", 5],
  ["offpage", "Label", "to cab", "label", "to cab"],
  ["offpage", "What lies beyond", "supply", "is", "supply"],
];

describe("each field of a kind can be written in the panel", () => {
  test.each(PLAIN)("%s: %s", async (kind, label, typed, name, value) => {
    const session = opened(kind);
    const target = field<HTMLInputElement | HTMLSelectElement>(await details(session), label);
    if (typed === true) await act(async () => target.click());
    else if (target instanceof HTMLSelectElement) await choose(target, String(typed));
    else await commit(target, String(typed));
    expect((part(session) as unknown as Record<string, unknown>)[name]).toEqual(value);
    expect(session.get().history.done).toHaveLength(1);
    expect(partSchema.safeParse(part(session)).success).toBe(true);
  });

  test("none is left out", () => {
    // these kinds have tables of their own
    const own: readonly PartKindName[] = ["switch", "module", "inline"];
    const common = new Set([
      "kind",
      "id",
      "sheet",
      "at",
      "turn",
      "label",
      "place",
      "photo",
      "unit",
    ]);
    const fields = partSchema.options.flatMap((option) =>
      Object.keys(option.shape)
        .filter((name) => !common.has(name))
        .map((name) => `${option.shape.kind.value} ${name}`),
    );
    const tried = new Set(PLAIN.map(([kind, , , name]) => `${kind} ${name}`));
    const left = fields.filter(
      (one) => !tried.has(one) && !own.some((kind) => one.startsWith(kind)),
    );
    expect(left).toEqual([]);
    expect(own.every((kind) => PART_KINDS.includes(kind))).toBe(true);
  });

  test.each(["relay", "lamp", "solenoid", "potentiometer", "alternator", "converter"] as const)(
    "a %s takes no number that a job can't hold",
    async (kind) => {
      const labels = PLAIN.filter(([of, , typed]) => of === kind && /^\d/.test(String(typed)));
      for (const [, label] of labels) {
        const session = opened(kind);
        const target = field<HTMLInputElement | HTMLSelectElement>(await details(session), label);
        if (target instanceof HTMLSelectElement) continue;
        for (const wrong of ["0", "-3", "-0.5"]) await commit(target, wrong);
        expect(partSchema.safeParse(part(session)).success, label).toBe(true);
      }
    },
  );
});

describe("a module", () => {
  const pins = [
    { id: "1", printed: "+24V" },
    { id: "2", printed: "GND" },
    { id: "3" },
    { id: "4" },
  ];
  const power = { supply: ["1"], ground: ["2"] };

  test("works from the volts that are typed, or from the usual ones", async () => {
    const session = opened("module", { pins, power });
    const page = await details(session);
    expect(field(page, "Works from").placeholder).toBe("14.4");
    await commit(field(page, "Works from"), "18 V");
    expect(part<"module">(session).power).toEqual({ ...power, minVolts: 18 });
  });

  test("says what it lacks before it is known to work", async () => {
    const page = await details(opened("module", { pins }));
    expect(page.textContent).toMatch(/Set the feed and the ground in the table above/);
  });

  test("joins pins as the mechanic says it, each word one edit", async () => {
    const session = opened("module", { pins, power });
    const page = await details(session);
    await press(page, "Add what it switches");
    await choose(field<HTMLSelectElement>(page, "When"), "delay-on");
    expect(page.textContent).toMatch(/Say which pin decides/);
    await choose(field<HTMLSelectElement>(page, "Input"), "4");
    await choose(field<HTMLSelectElement>(page, "On means"), "low");
    await commit(field(page, "Waits"), "2,5 s");
    expect(part<"module">(session).behaviour?.paths).toEqual([
      { between: ["1", "3"], does: "delay-on", input: "4", active: "low", seconds: 2.5 },
    ]);
    expect(session.get().history.done).toHaveLength(5);
    // what has no time keeps none, and what is always so needs no input
    await choose(field<HTMLSelectElement>(page, "When"), "always");
    expect(part<"module">(session).behaviour?.paths).toEqual([
      { between: ["1", "3"], does: "always" },
    ]);
  });

  test("never joins a pin with itself: it says so and keeps what was", async () => {
    const session = opened("module", { pins, power });
    const page = await details(session);
    await press(page, "Add what it switches");
    await choose(field<HTMLSelectElement>(page, "With"), "1");
    expect(page.querySelector('[role="alert"]')?.textContent).toMatch(/takes two pins/);
    expect(part<"module">(session).behaviour?.paths[0]?.between).toEqual(["1", "3"]);
  });

  test("takes current itself, and gives sensors theirs", async () => {
    const session = opened("module", { pins, power });
    const page = await details(session);
    await press(page, "Add what it draws itself");
    await commit(field(page, "Through"), "470");
    await press(page, "Add a source");
    await commit(field(page, "Volts"), "5");
    const { behaviour, sources } = part<"module">(session);
    expect(behaviour).toEqual({ paths: [], loads: [{ between: ["1", "2"], ohms: 470 }] });
    expect(sources).toMatchObject([{ volts: 5 }]);
    expect(partSchema.safeParse(part(session)).success).toBe(true);
  });

  test("not known is another thing than doing nothing", async () => {
    const session = opened("module", { pins, power });
    const page = await details(session);
    await act(async () => field(page, "I know what it does").click());
    expect(part<"module">(session).behaviour).toEqual({ paths: [] });
    await act(async () => field(page, "I know what it does").click());
    expect(part<"module">(session).behaviour).toBeUndefined();
  });
});

test("a part's fields survive as a part of the format whatever kind it is", () => {
  for (const kind of PART_KINDS) {
    expect(partSchema.safeParse(part(opened(kind)) as Part).success, kind).toBe(true);
  }
});
