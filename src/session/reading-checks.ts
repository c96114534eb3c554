import { parseQuantity, type Result } from "../base/index.ts";
import { type FirstCheck, freeId, type Id, idsOf, type Job } from "../job/index.ts";
import type { CheckName } from "../readings/index.ts";

/** A first check being entered. */
export interface CheckDraft {
  readonly check: CheckName;
  /** As typed so far. */
  readonly value: string;
  /** Volts of the known source, as typed; of the meter's proofs only. */
  readonly known: string;
  /** °C of the battery, as typed; may stay empty. */
  readonly celsius: string;
}

export const newCheckDraft = (check: CheckName): CheckDraft => ({
  check,
  value: "",
  known: "",
  celsius: "",
});

export const isMeterCheck = (check: CheckName): boolean =>
  check === "meter-before" || check === "meter-after";
export const isBatteryCheck = (check: CheckName): boolean =>
  check === "battery-at-rest" || check === "battery-under-load";
/** What the meter is set to for a check. */
export const measureOf = (check: CheckName): "volts" | "ohms" =>
  check === "leads-together" ? "ohms" : "volts";

/** Why the draft cannot be kept yet, in a sentence; null when it can. */
export function checkLacking(draft: CheckDraft): string | null {
  const filled = fill(draft);
  return filled.ok ? null : (filled.issues[0]?.message ?? "Type what the meter shows.");
}

/**
 * The check that a complete draft stands for, with the first free id. `at` is the ISO 8601 time it
 * was made. Null while something is lacking.
 */
export function checkOf(draft: CheckDraft, job: Job, at: string): FirstCheck | null {
  const filled = fill(draft);
  return filled.ok
    ? { id: freeId(idsOf(job), "C"), check: draft.check, ...filled.value, at }
    : null;
}

/** Keeps a check with its machine; earlier ones of the same name stay as its history. */
export function keepCheck(draft: Job, machine: Id, check: FirstCheck): void {
  const own = draft.machines.find((one) => one.id === machine);
  if (!own) throw new Error(`no such machine: ${machine}`);
  own.firstChecks ??= [];
  own.firstChecks.push(check);
}

/** Takes one check away again. */
export function dropCheck(draft: Job, machine: Id, check: Id): void {
  const own = draft.machines.find((one) => one.id === machine);
  if (own?.firstChecks) own.firstChecks = own.firstChecks.filter(({ id }) => id !== check);
}

type Filled = Pick<FirstCheck, "value" | "known" | "celsius">;

const lacks = (message: string): Result<never> => ({
  ok: false,
  issues: [{ code: "check-lacks", path: "", message }],
});

function fill({ check, value, known, celsius }: CheckDraft): Result<Filled> {
  const parsed = parseQuantity(value, measureOf(check));
  if (!parsed.ok) return parsed;
  if (parsed.value === "OL")
    return lacks("OL with the tips together: a lead is broken. Type the ohms of good leads.");
  const filled: Filled = { value: parsed.value };
  if (isMeterCheck(check)) {
    if (known.trim() === "") return lacks("Type the volts of the known source.");
    const source = parseQuantity(known, "volts");
    if (!source.ok) return source;
    if (source.value === "OL" || source.value === 0)
      return lacks("A known source has volts: type how many.");
    filled.known = source.value;
  }
  if (isBatteryCheck(check) && celsius.trim() !== "") {
    const degrees = parseCelsius(celsius);
    if (degrees === null)
      return lacks(`“${celsius.trim()}” is no temperature. Type degrees Celsius, like 5 or -10.`);
    filled.celsius = degrees;
  }
  return { ok: true, value: filled };
}

/** `5`, `-10`, `12,5 °C`; null for anything that no battery has. */
function parseCelsius(text: string): number | null {
  const found = /^\s*([+\u2212-]?)\s*(\d+(?:[.,]\d+)?)\s*(?:°?\s*C)?\s*$/i.exec(text);
  if (!found) return null;
  const degrees =
    Number((found[2] ?? "").replace(",", ".")) * (found[1] && found[1] !== "+" ? -1 : 1);
  return degrees >= -60 && degrees <= 90 ? degrees : null;
}
