import { type Finding, isAbout, isOfOneMachine, isOnSameGrounds } from "../check/index.ts";
import type { Id, Job, SetAside } from "../job/index.ts";
import { analysisDeskOf } from "./analysis-desk.ts";
import { takeOut } from "./diagram/draft.ts";
import { dropSetAside } from "./forget.ts";
import type { Session } from "./session.ts";

/** Reasons that a mechanic gives most, for one tap. */
export const USUAL_REASONS = [
  "Checked on the machine: it is so",
  "Built so by the manufacturer",
  "Known, repair is ordered",
  "Not part of this job",
] as const;

/**
 * Sets a finding aside for as long as it says the same by the same path: one edit. What was said of
 * it before is replaced. `at` is the time, ISO 8601. Without a reason nothing happens.
 */
export function setFindingAside(
  session: Session,
  finding: Finding,
  reason: string,
  at?: string,
): void {
  const words = reason.trim();
  if (words === "") return;
  const { job, machine } = session.get();
  const { findings } = analysisDeskOf(session).get().result;
  const entry = entryFor(finding, job, machine, words, at);
  // Entries that still hold for another finding about the same things are not this one's.
  const isReplaced = (one: SetAside) =>
    isAbout(one, finding) &&
    one.machine === entry.machine &&
    (isOnSameGrounds(one, finding) || !findings.some((other) => isOnSameGrounds(one, other)));
  session.edit(`Set aside ${finding.rule} (${finding.subjects[0] ?? ""})`, (draft) => {
    draft.setAside ??= [];
    takeOut(draft.setAside, isReplaced);
    draft.setAside.push(entry);
  });
}

function entryFor(
  finding: Finding,
  job: Job,
  machine: Id,
  reason: string,
  at: string | undefined,
): SetAside {
  const { rule, subjects, message, because } = finding;
  return {
    rule,
    subjects: [...subjects],
    ...(isOfOneMachine(finding, job, machine) ? { machine } : {}),
    message,
    ...(because ? { because: [...because] } : {}),
    reason,
    ...(at === undefined ? {} : { at }),
  };
}

/** Takes a finding back among those that count: one edit. */
export function bringFindingBack(session: Session, finding: Finding): void {
  const { machine } = session.get();
  session.edit(`Bring back ${finding.rule} (${finding.subjects[0] ?? ""})`, (draft) =>
    dropSetAside(
      draft,
      (one) =>
        isOnSameGrounds(one, finding) && (one.machine === undefined || one.machine === machine),
    ),
  );
}
