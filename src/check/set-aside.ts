import { addTo, sameList } from "../base/index.ts";
import type { Id, Job, SetAside } from "../job/index.ts";
import type { Finding } from "./finding.ts";
import type { Views } from "./rule.ts";
import { RULES } from "./rules/index.ts";
import { Last } from "./views/keep.ts";

/** Rules about these look at nothing that differs from machine to machine but its changes. */
const OF_THE_DIAGRAM: ReadonlySet<keyof Views> = new Set([
  "short",
  "load",
  "part",
  "fuse",
  "unfused",
  "untraced",
  "module",
  "plug",
  "links",
]);

const COMMON_RULES: ReadonlySet<string> = new Set(
  RULES.filter(({ about }) => OF_THE_DIAGRAM.has(about)).map(({ id }) => id),
);

/** Whether setting a finding aside speaks for every machine, or for the one it was found on alone. */
export const isOfOneMachine = ({ rule }: Finding, job: Job, machine: Id): boolean =>
  !COMMON_RULES.has(rule) ||
  (job.machines.find(({ id }) => id === machine)?.changes?.length ?? 0) > 0;

/** Whether the entry was made of a finding of this rule about these very things. */
export const isAbout = (
  entry: Pick<SetAside, "rule" | "subjects">,
  finding: Pick<Finding, "rule" | "subjects">,
): boolean => entry.rule === finding.rule && sameList(entry.subjects, finding.subjects);

/** Whether the finding says what it said when it was set aside, and by the same path. */
export const isOnSameGrounds = (entry: SetAside, finding: Finding): boolean =>
  isAbout(entry, finding) &&
  entry.message === finding.message &&
  sameList(entry.because ?? [], finding.because ?? []);

type Entries = ReadonlyMap<string, readonly SetAside[]>;

/**
 * Marks the findings that the user set aside, and those that were set aside on other grounds than
 * they have now. All others are handed on as they are, and a marked one stays the same object for as
 * long as the finding and its mark do.
 */
export class SetAsideMarks {
  private readonly entries = new Last<Entries>();
  private readonly marked = new WeakMap<Finding, Finding>();

  on(findings: readonly Finding[], { setAside }: Job, machine: Id): readonly Finding[] {
    if (!setAside?.length) return findings;
    const entries = this.entries.of([setAside, machine], () => byRule(setAside, machine));
    const [about, held] = [new Map<Finding, readonly SetAside[]>(), new Set<SetAside>()];
    for (const finding of findings) {
      const own = entries.get(keyOf(finding))?.filter((entry) => isAbout(entry, finding)) ?? [];
      if (own.length === 0) continue;
      about.set(finding, own);
      const same = own.find((entry) => isOnSameGrounds(entry, finding));
      if (same) held.add(same);
    }
    if (about.size === 0) return findings;
    return findings.map((finding) => {
      const own = about.get(finding);
      if (!own) return finding;
      const same = own.find((entry) => isOnSameGrounds(entry, finding));
      if (same) return this.mark(finding, "setAside", same.reason);
      // Of two findings about the same things, what was said of the one is no word on the other.
      const before = own.findLast((entry) => !held.has(entry));
      return before ? this.mark(finding, "setAsideBefore", before.reason) : finding;
    });
  }

  private mark(finding: Finding, field: "setAside" | "setAsideBefore", reason: string): Finding {
    const known = this.marked.get(finding);
    if (known?.[field] === reason) return known;
    const marked = { ...finding, [field]: reason };
    this.marked.set(finding, marked);
    return marked;
  }
}

const keyOf = ({ rule, subjects }: Pick<Finding, "rule" | "subjects">) =>
  `${rule} ${subjects[0] ?? ""}`;

function byRule(setAside: readonly SetAside[], machine: Id): Entries {
  const entries = new Map<string, SetAside[]>();
  for (const entry of setAside) {
    if (entry.machine === undefined || entry.machine === machine)
      addTo(entries, keyOf(entry), entry);
  }
  return entries;
}
