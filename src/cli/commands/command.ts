import type { FlagOption, ValueOption } from "../arguments.ts";
import type { Exit, Io } from "../io.ts";

/** A command with its arguments looked over: only options that it knows, files as many as it takes. */
export interface Call {
  readonly files: readonly string[];
  readonly json: boolean;
  readonly value: (option: ValueOption) => string | undefined;
}

export interface Command {
  readonly name: string;
  /** What stands after its name in the help. */
  readonly takes: string;
  /** What it does, one line. */
  readonly does: string;
  /** What it reads, as the help calls it. */
  readonly input: "job file" | "picture";
  readonly files: "one" | "several";
  readonly options: readonly (ValueOption | FlagOption)[];
  /** Options that it cannot do without. */
  readonly needs: readonly ValueOption[];
  readonly run: (call: Call, io: Io) => Promise<Exit>;
}
