import type { Issue } from "../base/index.ts";
import type { Job } from "./types.ts";
import { referenceIssues } from "./validate.ts";
import type { IssueCode } from "./wording.ts";

type Step = string | number;
type Holder = Record<Step, unknown>;

/** Faults that go away with the thing that refers. */
const DANGLING: ReadonlySet<string> = new Set<IssueCode>([
  "unknown-part",
  "unknown-pin",
  "unknown-plug",
  "unknown-cavity",
  "unknown-position",
]);

const stepsOf = (path: string): Step[] =>
  [...path.matchAll(/\[(\d+)\]|([^.[\]]+)/g)].map((found) =>
    found[1] === undefined ? String(found[2]) : Number(found[1]),
  );

/** A pair of pins means nothing with one of them gone: its owner goes as a whole. */
const WHOLE = new Set<Step>(["between"]);

/**
 * What has to go: up to the innermost list member on the way to the fault, or the field itself
 * where none holds it (a switch's `rest`).
 */
function targetOf(path: string): Step[] {
  const steps = stepsOf(path);
  const pair = steps.findIndex((step) => WHOLE.has(step));
  const within = pair < 0 ? steps : steps.slice(0, pair);
  if (within.at(-1) === "rest") return within;
  let last = within.length - 1;
  while (last > 0 && typeof within[last] !== "number") last--;
  return within.slice(0, last + 1);
}

/** Takes the value at `path` out of a structure that is ours to change. */
function drop(root: unknown, path: readonly Step[]) {
  let holder = root as Holder;
  for (const step of path.slice(0, -1)) holder = holder[step] as Holder;
  const last = path.at(-1);
  if (Array.isArray(holder)) holder.splice(Number(last), 1);
  else if (last !== undefined) delete holder[last];
}

/** Later list members first, so that the places of the earlier ones hold while we drop. */
function laterFirst(a: readonly Step[], b: readonly Step[]): number {
  for (let n = 0; n < Math.min(a.length, b.length); n++) {
    const [left, right] = [a[n], b[n]];
    if (left === right) continue;
    if (typeof left === "number" && typeof right === "number") return right - left;
    return String(left) < String(right) ? -1 : 1;
  }
  return b.length - a.length;
}

export interface Mended {
  readonly job: Job;
  /** The faults that were mended. */
  readonly mended: readonly Issue[];
  /** Those that cannot be: two things with one id, a picture outside the folder. */
  readonly left: readonly Issue[];
}

/**
 * Drops what refers to things that are gone (a wire to a deleted part, a link to a deleted cavity)
 * and adds an empty sheet where parts lie on a missing one. The job is returned as it is when it
 * has no such fault. For jobs that this program saved itself, so that a forgotten loose thread
 * never keeps a user from their work; files from elsewhere are refused instead.
 */
export function mendReferences(job: Job): Mended {
  const mended: Issue[] = [];
  let now = job;
  for (;;) {
    const issues = referenceIssues(now);
    const dangling = issues.filter((found) => DANGLING.has(found.code));
    const sheets = issues.filter((found) => found.code === "unknown-sheet");
    if (dangling.length === 0 && sheets.length === 0) return { job: now, mended, left: issues };
    const copy = JSON.parse(JSON.stringify(now)) as Job;
    for (const found of sheets) {
      const part = stepsOf(found.path)
        .slice(0, -1)
        .reduce((holder, step) => holder[step] as Holder, copy as unknown as Holder);
      const id = String(part.sheet);
      if (!copy.diagram.sheets.some((sheet) => sheet.id === id)) copy.diagram.sheets.push({ id });
    }
    const targets = new Map(
      dangling.map((found) => {
        const target = targetOf(found.path);
        return [target.join(), target];
      }),
    );
    for (const target of [...targets.values()].sort(laterFirst)) drop(copy, target);
    mended.push(...dangling, ...sheets);
    now = copy;
  }
}
