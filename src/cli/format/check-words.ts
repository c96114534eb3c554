import type { CheckResult, Finding } from "../../check/index.ts";
import { type Job, splitRef } from "../../job/index.ts";
import { rolesInWords } from "../../roles/index.ts";
import { plainText, tableOf } from "./plain-text.ts";

const SIGNS: Readonly<Record<Finding["severity"], string>> = {
  contradiction: "X",
  warning: "!",
  note: "-",
};

/** A check's result for a person: one line a pin, then the findings in words. */
export function checkInWords(file: string, job: Job, result: CheckResult): string {
  const { roles, findings, summary, machine } = result;
  const name = job.machines.find((one) => one.id === machine)?.name ?? machine;
  const rows = roles.map((role) => [
    role.cavity === null ? "" : splitRef(role.cavity).name,
    role.pin,
    role.printed ?? "",
    role.fits.length > 4 ? "not traced to its end" : rolesInWords(role.fits),
    role.verdict,
  ]);
  return [
    plainText(`${job.title}, ${name} (${file})`),
    "",
    ...tableOf(["mark", "pin", "printed", "the circuit says", "verdict"], rows),
    "",
    ...findings.map((finding) => plainText(`${SIGNS[finding.severity]} ${finding.message}`)),
    ...(findings.length > 0 ? [""] : []),
    `${summary.contradictions} contradictions, ${summary.warnings} warnings, ${summary.notes} notes`,
    "",
    "",
  ].join("\n");
}
