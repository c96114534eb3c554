import { fail, ok, type Result } from "../base/index.ts";

/** Options that take a value, and what the value is called in the help. */
export const VALUE_OPTIONS = {
  machine: "ID",
  out: "FILE",
  plug: "ID",
  side: "wire|mating",
  size: "A4|Letter",
  revision: "TEXT",
  when: "FILE",
  terminals: "FILE",
} as const;
export type ValueOption = keyof typeof VALUE_OPTIONS;

export const FLAG_OPTIONS = ["json", "help"] as const;
export type FlagOption = (typeof FLAG_OPTIONS)[number];

export interface Arguments {
  /** What stands for itself: the command, then its files. */
  readonly words: readonly string[];
  readonly flags: ReadonlySet<FlagOption>;
  readonly values: ReadonlyMap<ValueOption, string>;
}

const isFlag = (name: string): name is FlagOption =>
  (FLAG_OPTIONS as readonly string[]).includes(name);
const isValue = (name: string): name is ValueOption => Object.hasOwn(VALUE_OPTIONS, name);

const bad = (message: string): Result<never> => fail({ code: "call", path: "", message });

/** `--json`, `--machine ID` or `--machine=ID`, `-h`; after `--` everything is a file. */
export function parseArguments(argv: readonly string[]): Result<Arguments> {
  const words: string[] = [];
  const flags = new Set<FlagOption>();
  const values = new Map<ValueOption, string>();
  for (let at = 0; at < argv.length; at++) {
    const word = argv[at] ?? "";
    if (word === "--") {
      words.push(...argv.slice(at + 1));
      break;
    }
    if (word === "-h") flags.add("help");
    else if (!word.startsWith("-") || word === "-") words.push(word);
    else {
      const equals = word.indexOf("=");
      const name = word.slice(2, equals < 0 ? undefined : equals);
      if (!word.startsWith("--") || !(isFlag(name) || isValue(name))) {
        return bad(`there is no option ${word}: see pintruth --help`);
      }
      if (isFlag(name)) {
        if (equals >= 0) return bad(`--${name} takes no value: write it alone`);
        flags.add(name);
        continue;
      }
      const value = equals < 0 ? argv[++at] : word.slice(equals + 1);
      if (value === undefined || value === "" || (equals < 0 && value.startsWith("--"))) {
        return bad(`--${name} needs a value: write --${name} ${VALUE_OPTIONS[name]}`);
      }
      if (values.has(name)) return bad(`--${name} is given twice: give it once`);
      values.set(name, value);
    }
  }
  return ok({ words, flags, values });
}
