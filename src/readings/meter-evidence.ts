import { type CavityRef, type Id, type Job, ROLE_NAMES, type RoleName } from "../job/index.ts";
import type { RuledOut } from "../roles/index.ts";
import type { Presence } from "./presence.ts";
import { type RulesOut, rulesOut } from "./rule-out.ts";

/** What the readings of one machine allow a cavity to be. */
export interface MeterEvidence {
  /** Roles that every reading allows; all of them while nothing is proved. */
  readonly fits: readonly RoleName[];
  /** The others, each with the readings that rule it out. */
  readonly ruledOut: readonly RuledOut[];
  /** Ids of the readings that prove something present; empty while none does. */
  readonly confirmedBy: readonly Id[];
  readonly sentence: string;
}

/**
 * Puts the readings at a cavity together. Only presence counts: 0 V, OL and floating may be a fault
 * and narrow nothing; open-circuit volts come through one strand and narrow nothing either. Input
 * and output are never ruled out: a contact or a load may bring either about.
 */
export function meterEvidence(job: Job, machine: Id, cavity: CavityRef): MeterEvidence {
  const readings = job.machines.find((one) => one.id === machine)?.readings ?? [];
  return evidenceOf(
    readings.flatMap((reading) => {
      const found = rulesOut(job, machine, reading, cavity);
      return found ? [{ id: reading.id, ...found }] : [];
    }),
  );
}

/** The same of readings that all show something present there, with what each rules out. */
export function evidenceOf(shown: readonly (RulesOut & { readonly id: Id })[]): MeterEvidence {
  const confirmedBy: Id[] = [];
  const kinds = new Set<Presence["is"]>();
  const out = new Map<RoleName, { by: Id[]; why: string }>();
  for (const { id, presence } of shown) {
    kinds.add(presence.is);
    confirmedBy.push(id);
  }
  for (const { id, roles, besideFeed } of shown) {
    for (const [role, why] of [...roles, ...(kinds.has("feed") ? besideFeed : [])]) {
      const known = out.get(role);
      if (known) known.by.push(id);
      else out.set(role, { by: [id], why });
    }
  }
  return {
    fits: ROLE_NAMES.filter((role) => !out.has(role)),
    ruledOut: ROLE_NAMES.flatMap((role) => {
      const found = out.get(role);
      return found ? [{ role, ...found }] : [];
    }),
    confirmedBy,
    sentence: sentenceOf(kinds),
  };
}

function sentenceOf(kinds: ReadonlySet<Presence["is"]>): string {
  if (kinds.size === 2) return "A feed in one state and a return in another: switched, or driven.";
  if (kinds.has("feed")) return "System voltage holds under load here: it is fed.";
  if (kinds.has("return")) return "A solid way back is here: it leads to ground.";
  return "No reading yet shows anything present here; absence proves no role.";
}
