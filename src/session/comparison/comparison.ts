import type { CavityRef, Colour, Id, Machine, PinRef } from "../../job/index.ts";
import type { ReadingVerdict } from "../../readings/index.ts";
import type { Verdict } from "../../roles/index.ts";

/** What two machines may differ in. */
export type Trait = "colour" | "number" | "size" | "printed word" | "meter" | "reading";

/** In what a machine's wire is not as drawn; `turned`: only base and tracer are exchanged. */
export type CellMark = "colour" | "turned" | "number" | "size";

/** A wire as somebody has it; null: not said. */
export interface WireLook {
  readonly colour: Colour | null;
  readonly number: string | null;
  /** Square millimetres. */
  readonly mm2: number | null;
  /** Gauge; only a drawing has it. 0, -1, -2, -3 stand for 1/0, 2/0, 3/0, 4/0. */
  readonly awg: number | null;
}

/** What one machine has in one cavity, and what is judged of it there. */
export interface MachineCell {
  readonly machine: Id;
  /** As noted on the machine. */
  readonly wire: WireLook;
  /** As drawn for this machine, where its own changes make that another than the diagram's. */
  readonly drawnHere: WireLook | null;
  /** Verdict on the printed word; null where no module's pin is tied. */
  readonly verdict: Verdict | null;
  /** What the circuit of this machine says, e.g. `ground`. */
  readonly circuit: string;
  /** What the meter says the pin is; empty while it can't tell. */
  readonly meterRole: string;
  readonly meterVerdict: Verdict | null;
  /** The reading that says most, e.g. `24.10 V`; null where none was taken. */
  readonly reading: {
    readonly value: string;
    readonly verdict: ReadingVerdict;
    readonly words: string;
    /** Others taken there. */
    readonly others: number;
  } | null;
  /** In what it is not as drawn. */
  readonly marks: readonly CellMark[];
}

export interface ComparisonRow {
  /** Unlike the cavity, never the same for two rows: a mark may be given twice. */
  readonly key: string;
  readonly cavity: CavityRef;
  readonly mark: string;
  readonly pin: PinRef | null;
  readonly printed: string;
  readonly drawn: WireLook;
  /** One for each machine, in the order of the job. */
  readonly cells: readonly MachineCell[];
  /** In what the machines are not like one another. */
  readonly among: readonly Trait[];
}

/** One plug on every machine of a job beside the diagram. */
export interface Comparison {
  readonly plug: Id;
  readonly machines: readonly Pick<Machine, "id" | "name" | "serial">[];
  readonly rows: readonly ComparisonRow[];
}

/** True where a machine is not as drawn, or the machines are not alike. */
export const isDifferent = ({ cells, among }: ComparisonRow): boolean =>
  among.length > 0 || cells.some(({ marks }) => marks.length > 0);
