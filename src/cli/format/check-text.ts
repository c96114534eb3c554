import type { CheckResult, Finding, Severity } from "../../check/index.ts";
import { type Machine, splitRef } from "../../job/index.ts";
import { isOpen, type Role, rolesInWords } from "../../roles/index.ts";
import { cautionLines } from "./cautions.ts";
import { counted, plain, WIDTH, wrapped } from "./plain.ts";
import { table } from "./table.ts";

/** Each severity has its sign and its word, in the order in which they are told. */
const SEVERITIES: readonly (readonly [Severity, sign: string])[] = [
  ["contradiction", "X"],
  ["warning", "!"],
  ["note", "-"],
];

function circuitOf(role: Role): string {
  if (isOpen(role)) return "most things fit";
  const { circuitSide, fits } = role;
  const roles = rolesInWords(fits);
  return circuitSide === null ? roles : `${roles}, ${circuitSide} side`;
}

const meterOf = ({ meterRole, meterVerdict }: Role): string =>
  meterRole ?? (meterVerdict === "unproven" ? "" : meterVerdict);

const cells = (role: Role): string[] =>
  [
    role.cavity === null ? "" : splitRef(role.cavity).name,
    role.pin,
    role.printed ?? "",
    circuitOf(role),
    meterOf(role),
    role.verdict === "contradicted" ? "CONTRADICTED" : role.verdict,
  ].map(plain);

function finding(found: Finding, sign: string): string[] {
  const about = found.because?.length ? `; path ${found.because.join(", ")}` : "";
  return [
    ...wrapped(plain(found.message), WIDTH - 4).map((line, n) =>
      n === 0 ? `  ${sign} ${line}` : `    ${line}`,
    ),
    ...wrapped(`(${found.rule}${plain(about)})`, WIDTH - 4).map((line) => `    ${line}`),
    ...reasonOf(found).map((line) => `    ${line}`),
  ];
}

function reasonOf({ setAside, setAsideBefore }: Finding): string[] {
  if (setAside !== undefined) return wrapped(plain(`Set aside: ${setAside}`), WIDTH - 4);
  if (setAsideBefore === undefined) return [];
  const before = `Set aside before, on other grounds: ${setAsideBefore}`;
  return wrapped(plain(before), WIDTH - 4);
}

function findingsOf(result: CheckResult): string[] {
  if (result.findings.length === 0) return ["", "Nothing to tell."];
  const counting = result.findings.filter((found) => found.setAside === undefined);
  const told = SEVERITIES.flatMap(([severity, sign]) => {
    const list = counting.filter((found) => found.severity === severity);
    if (list.length === 0) return [];
    return ["", counted(list.length, severity), ...list.flatMap((found) => finding(found, sign))];
  });
  const aside = result.findings.filter((found) => found.setAside !== undefined);
  if (aside.length === 0) return told;
  return [...told, "", `${aside.length} set aside`, ...aside.flatMap((one) => finding(one, "~"))];
}

/** The check of one machine for people: its pins in a table, then what was found, gravest first. */
export function checkText(file: string, machine: Machine | null, result: CheckResult): string {
  const name = machine ? `machine ${machine.id}, ${machine.name}` : "no machine";
  const pins =
    result.roles.length === 0
      ? ["No module has pins yet."]
      : table(["cavity", "pin", "printed", "circuit", "meter", "verdict"], result.roles.map(cells));
  // A role that is undecided comes with the reading that settles it.
  const proposes = result.findings.some(
    (found) => found.rule === "role-undecided" && found.setAside === undefined,
  );
  const cautions = proposes ? ["", ...cautionLines()] : [];
  const lines = [
    plain(`${file}: ${name}`),
    "",
    ...pins,
    ...findingsOf(result),
    ...cautions,
    "",
    "",
  ];
  return lines.join("\n");
}
