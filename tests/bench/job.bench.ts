import { checkJob } from "../../src/check/index.ts";
import { applyEdit, EMPTY_HISTORY, type Job, readJobText } from "../../src/job/index.ts";
import { bigJob } from "../support/big-job.ts";
import { type Bench, heapOf, median, ninetieth, type Row, times } from "./harness.ts";

const WIRES = 5000;
const REFERENCE = "parse and copy";

const job = bigJob(WIRES);
const text = JSON.stringify(job);
const machine = job.machines[0]?.id ?? "";

const parsed = (): Job => JSON.parse(text);

/** The job with one wire's colour changed, through the same door as the user's edits. */
function edited(before: Job): Job {
  const now = { job: before, history: EMPTY_HISTORY };
  return applyEdit(now, "Colour a wire", (draft) => {
    const wire = draft.diagram.wires[WIRES / 2];
    if (wire) wire.colour = { base: "RD" };
  }).job;
}

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

/** Times of a first check and of one after an edit, in turns; only one turn where it takes long. */
function checks() {
  const check: number[] = [];
  const recheck: number[] = [];
  while (check.length < 5 && (check[0] ?? 0) < 5000) {
    const first = parsed();
    check.push(
      ...times(
        () => checkJob(first, machine),
        () => null,
        { runs: 1, warmUp: 0 },
      ),
    );
    const second = edited(first);
    recheck.push(
      ...times(
        () => checkJob(second, machine),
        () => null,
        { runs: 1, warmUp: 0 },
      ),
    );
  }
  return { check, recheck };
}

const bench: Bench = {
  title: "A job of 5,000 wires, in the core",
  about:
    `${job.diagram.parts.length} parts, ${job.diagram.wires.length} wires, ${job.plugs.length} plugs, ` +
    `${(text.length / 1e6).toFixed(1)} MB of JSON. The reference is what no program that reads the ` +
    "file can avoid: `structuredClone(JSON.parse(text))` of the same text.",
  async run() {
    const reference = times(
      () => structuredClone(JSON.parse(text)),
      () => null,
    );
    const base = median(reference);
    const validate = times(
      () => readJobText(text),
      () => null,
    );
    const { check, recheck } = checks();
    const { roles, findings } = checkJob(parsed(), machine);
    if (!readJobText(text).ok) throw new Error("the large job is not a valid one");
    return [
      { what: REFERENCE, median: base },
      row(
        "read: parse, guard, validate, references",
        validate,
        base,
        `${heapOf(parsed).toFixed(0)} MB held by the document`,
      ),
      row(
        "check, nothing known yet",
        check,
        base,
        `${roles.length} roles, ${findings.length} findings, ` +
          `${heapOf(() => checkJob(parsed(), machine)).toFixed(0)} MB held`,
      ),
      row("check again after one edit", recheck, base),
    ];
  },
};

export default bench;
