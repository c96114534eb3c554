import {
  type Job,
  newJob,
  type Part,
  type PartKindName,
  type PartOf,
} from "../../src/job/index.ts";

type Fields<K extends PartKindName> = Partial<Omit<PartOf<K>, "kind" | "id">>;

/**
 * Builds small jobs for tests in a few readable lines: parts by kind and id, wires as strings
 * `"G1:+ F1:1"`, module pins as `{ pin: printed word }`. Everything sits at the sheet's origin.
 */
export class CircuitBuilder {
  readonly job: Job;
  private wireCount = 0;

  constructor(systemVoltage = 24) {
    this.job = newJob("Test", systemVoltage);
    this.job.diagram.sheets.push({ id: "sheet1" });
  }

  part<K extends PartKindName>(kind: K, id: string, fields: Fields<K> = {} as Fields<K>): this {
    this.job.diagram.parts.push({
      kind,
      id,
      sheet: "sheet1",
      at: [0, 0],
      turn: 0,
      ...fields,
    } as unknown as Part);
    return this;
  }

  module(
    id: string,
    pins: Readonly<Record<string, string | null>>,
    more: Fields<"module"> = {},
  ): this {
    const list = Object.entries(pins).map(([pin, printed]) =>
      printed === null ? { id: pin } : { id: pin, printed },
    );
    return this.part("module", id, { pins: list, ...more });
  }

  /** A two-position switch with one contact between `1` and `2`, closed when worked. */
  contact(id: string, control: PartOf<"switch">["control"], more: Fields<"switch"> = {}): this {
    return this.part("switch", id, {
      positions: ["rest", "worked"],
      rest: "rest",
      control,
      contacts: [{ between: ["1", "2"], closedIn: ["worked"] }],
      ...more,
    });
  }

  /** Off, run and start; `15` live in run and start, `50` in start only, from `30`. */
  key(id: string): this {
    return this.part("switch", id, {
      positions: ["off", "run", "start"],
      rest: "off",
      springReturn: ["start"],
      control: "key",
      contacts: [
        { between: ["30", "15"], closedIn: ["run", "start"] },
        { between: ["30", "50"], closedIn: ["start"] },
      ],
    });
  }

  /** One wire a string: `"G1:+ F1:1"`. A chain of more pins makes a wire between each two. */
  wire(...chains: readonly string[]): this {
    for (const chain of chains) {
      const pins = chain.split(" ");
      for (let i = 0; i + 1 < pins.length; i++) {
        this.job.diagram.wires.push({
          id: `W${++this.wireCount}`,
          from: pins[i] ?? "",
          to: pins[i + 1] ?? "",
        });
      }
    }
    return this;
  }
}

/** A battery G1 grounded on the frame at GND1, as nearly every test needs. */
export const withBattery = (systemVoltage = 24): CircuitBuilder =>
  new CircuitBuilder(systemVoltage)
    .part("battery", "G1")
    .part("ground", "GND1")
    .wire("G1:- GND1:1");
