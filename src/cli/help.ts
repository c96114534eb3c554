import { VALUE_OPTIONS } from "./arguments.ts";
import { COMMANDS, type Command } from "./commands/index.ts";

const OPTION_WORDS: Readonly<Record<string, string>> = {
  json: "the answer as JSON, for other programs",
  machine: "only this machine; else every machine of the job",
  out: "the file to write; its ending says what",
  plug: "the plug to print; else the first",
  side: "the side that the face is seen from; else the side it was drawn from",
  size: "the size of the page; else A4",
  revision: "what stands under Revision; else 1",
  when: "a JSON file with the state, as `when` of a reading; else all at rest",
  terminals: "a JSON file that names places and parts of the picture; else all long lines",
};

const optionLine = (name: string) => {
  const value = (VALUE_OPTIONS as Readonly<Record<string, string>>)[name];
  const shown = value === undefined ? `--${name}` : `--${name} ${value}`;
  return `  ${shown.padEnd(22)}${OPTION_WORDS[name] ?? ""}`;
};

/** The help of one command. */
export const commandHelp = (command: Command): string =>
  [
    `pintruth ${command.name} ${command.takes}`,
    "",
    `  ${command.does}`,
    "",
    ...command.options.map(optionLine),
    "",
  ].join("\n");

/** The help of the whole program. */
export const help = (): string =>
  [
    "Pintruth reconciles a wiring diagram, a real plug and a meter.",
    "",
    ...COMMANDS.map(
      ({ name, takes, does }) => `  pintruth ${`${name} ${takes}`.padEnd(32)}${does}`,
    ),
    "",
    "A JOB is a .json or .pintruth file, an IMAGE a PNG or JPEG picture. The usual options:",
    "",
    optionLine("json"),
    optionLine("machine"),
    `  ${"--help".padEnd(22)}this, or the help of a command with all its options`,
    "",
    "Exit status: 0 done; 1 (check only) something contradicts; 2 the input or the call is bad.",
    "The maker's instructions, local rules and a qualified person come before anything said here.",
    "",
  ].join("\n");
