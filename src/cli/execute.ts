import { type Call, type Io, parseCall } from "./call.ts";
import { check } from "./commands/check.ts";
import { convert } from "./commands/convert.ts";
import { predict } from "./commands/predict.ts";
import { sheet } from "./commands/sheet.ts";
import { complain, type Status } from "./status.ts";

interface Command {
  readonly name: string;
  readonly usage: string;
  readonly does: string;
  readonly options: readonly string[];
  readonly run: (call: Call, io: Io) => Promise<Status>;
}

const COMMANDS: readonly Command[] = [
  {
    name: "check",
    usage: "check JOB... [--json] [--machine ID]",
    does: "what every pin must be, and where paper, plug and meter contradict one another",
    options: ["json", "machine"],
    run: check,
  },
  {
    name: "predict",
    usage: "predict JOB... [--json] [--machine ID]",
    does: "what a meter should show, for the readings taken and for every cavity",
    options: ["json", "machine"],
    run: predict,
  },
  {
    name: "sheet",
    usage:
      "sheet JOB --out FILE.pdf|.csv [--machine ID] [--plug ID] [--side mating|wire] [--size A4|Letter] [--revision TEXT]",
    does: "the corrected pinout sheet for the glovebox",
    options: ["machine", "out", "plug", "side", "size", "revision"],
    run: sheet,
  },
  {
    name: "convert",
    usage: "convert JOB --out FILE.json|.pintruth",
    does: "a job with its pictures beside it into one file, or back",
    options: ["out"],
    run: convert,
  },
];

const help = (): string =>
  [
    "Pintruth: what every cavity of a plug really does.",
    "",
    ...COMMANDS.flatMap(({ usage, does }) => [`  pintruth ${usage}`, `      ${does}`]),
    "",
    "A job is a .json or a .pintruth file. Exit status: 0 done, 1 a contradiction (check), 2 bad input.",
    "The maker's instructions, local rules and a qualified person come before anything said here.",
    "",
  ].join("\n");

/** Runs one call of the command line and returns its exit status. */
export async function execute(argv: readonly string[], io: Io): Promise<Status> {
  const [name, ...args] = argv;
  if (name === "--help" || name === "-h" || name === "help") {
    io.out(help());
    return 0;
  }
  const bad = (message: string) => complain(io, "", [{ code: "call", path: "", message }]);
  if (name === undefined) return bad("say what to do; see pintruth --help");
  const command = COMMANDS.find((one) => one.name === name);
  if (!command) return bad(`there is no command ${name}; see pintruth --help`);
  const call = parseCall(args, command.options);
  return call.ok ? command.run(call.value, io) : complain(io, "", call.issues);
}
