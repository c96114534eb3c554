import { type Arguments, type FlagOption, parseArguments, type ValueOption } from "./arguments.ts";
import { COMMANDS, type Command } from "./commands/index.ts";
import { commandHelp, help } from "./help.ts";
import { EXIT, type Exit, type Io } from "./io.ts";
import { complaint } from "./job-input.ts";

/** What is wrong with a call of this command; null when nothing is. */
function callFault(command: Command, files: readonly string[], given: Arguments): string | null {
  const { name, takes, input } = command;
  const usage = `write pintruth ${name} ${takes}`;
  const options: (ValueOption | FlagOption)[] = [...given.flags, ...given.values.keys()];
  const unknown = options.find((option) => !command.options.includes(option));
  if (unknown) return `${name} has no option --${unknown}: see pintruth ${name} --help`;
  if (files.length === 0) return `${name} needs a ${input}: ${usage}`;
  if (files.length > 1 && command.files === "one") {
    return `${name} takes one ${input} and not ${files.length}: ${usage}`;
  }
  const missing = command.needs.find((option) => !given.values.has(option));
  return missing ? `${name} needs --${missing}: ${usage}` : null;
}

/** Runs one call of the command line, without the program's own name, and returns its exit status. */
export async function execute(argv: readonly string[], io: Io): Promise<Exit> {
  const refuse = (message: string): Exit => {
    io.err(complaint(null, [{ code: "call", path: "", message }]));
    return EXIT.bad;
  };
  const parsed = parseArguments(argv);
  if (!parsed.ok) return refuse(parsed.issues[0]?.message ?? "");
  const { words, flags, values } = parsed.value;
  const [name, ...files] = words;
  const wantsHelp = flags.has("help") || name === "help";
  const command = COMMANDS.find((one) => one.name === (name === "help" ? files[0] : name));
  if (wantsHelp && (command || files.length === 0)) {
    io.out(command ? commandHelp(command) : help());
    return EXIT.done;
  }
  if (name === undefined) return refuse("no command is given: see pintruth --help");
  if (!command) {
    return refuse(`there is no command ${JSON.stringify(name)}: see pintruth --help`);
  }
  const fault = callFault(command, files, parsed.value);
  if (fault !== null) return refuse(fault);
  const call = {
    files,
    json: flags.has("json"),
    value: (option: ValueOption) => values.get(option),
  };
  return command.run(call, io);
}
