import { checkJob, createChecker } from "../../src/check/index.ts";
import { type Job, readJobText } from "../../src/job/index.ts";
import { rolesOf } from "../../src/roles/index.ts";
import { bigJob } from "../support/big-job.ts";
import { edited, editKinds } from "./edits.ts";
import { type Bench, heapOf, median, ninetieth, type Row, times } from "./harness.ts";

const WIRES = 10_000;
const REFERENCE = "parse and copy";
/** Edits of each kind, one after the other on the same job; the first few do not count. */
const EDITS = 25;
const WARM_UP = 5;

const job = bigJob(WIRES);
const text = JSON.stringify(job);
const machine = job.machines[0]?.id ?? "";

const parsed = (): Job => JSON.parse(text);

function row(what: string, taken: readonly number[], reference: number, note?: string): Row {
  const spread =
    taken.length > 1 ? `9 of 10 below ${ninetieth(taken).toFixed(1)} ms` : "measured once";
  return {
    what,
    median: median(taken),
    against: REFERENCE,
    ratio: median(taken) / reference,
    note: note === undefined ? spread : `${spread}; ${note}`,
  };
}

/** Times of checking again after each of a row of edits of one kind, by one who checked before. */
function rechecks(change: (draft: Job, n: number) => void): number[] {
  const checker = createChecker(machine);
  let now = edited(parsed(), (draft) => {
    draft.title += "!";
  });
  checker.check(now);
  const taken: number[] = [];
  for (let n = 0; n < EDITS; n++) {
    now = edited(now, (draft) => change(draft, n));
    const began = performance.now();
    checker.check(now);
    if (n >= WARM_UP) taken.push(performance.now() - began);
  }
  return taken;
}

const bench: Bench = {
  title: "A job of 10,000 wires, in the core",
  about:
    `${job.diagram.parts.length} parts, ${job.diagram.wires.length} wires, ${job.diagram.parts.filter(({ kind }) => kind === "module").length} modules, ` +
    `${job.plugs.length} plugs, ${(text.length / 1e6).toFixed(1)} MB of JSON. The reference is what ` +
    "no program that reads the file can avoid: `structuredClone(JSON.parse(text))` of the same text. " +
    "A check again comes after one edit of the kind named, at another place of the machine each time; " +
    "a screen that keeps up has 16.7 ms for everything.",
  async run() {
    const document = heapOf(parsed);
    const held = heapOf(() => {
      const checker = createChecker(machine);
      return [checker, checker.check(parsed())];
    });
    const once = { runs: 5, warmUp: 1 };
    const reference = times(
      () => structuredClone(JSON.parse(text)),
      () => null,
    );
    const base = median(reference);
    const validate = times(
      () => readJobText(text),
      () => null,
      once,
    );
    const roles = times((fresh: Job) => rolesOf(fresh, machine), parsed, once);
    const check = times((fresh: Job) => checkJob(fresh, machine), parsed, once);
    const found = checkJob(parsed(), machine);
    if (!readJobText(text).ok) throw new Error("the large job is not a valid one");
    return [
      { what: REFERENCE, median: base },
      row(
        "read: parse, guard, validate, references",
        validate,
        base,
        `${document.toFixed(0)} MB held by the document`,
      ),
      row("roles of every module, nothing known yet", roles, base, `${found.roles.length} pins`),
      row(
        "check, nothing known yet",
        check,
        base,
        `${found.findings.length} findings; ${held.toFixed(0)} MB held by document, result and ` +
          "all that is kept for the next check",
      ),
      ...editKinds(job).map(([what, change]) =>
        row(`check again after an edit: ${what}`, rechecks(change), base),
      ),
    ];
  },
};

export default bench;
