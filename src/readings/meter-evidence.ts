import { type CavityRef, type Id, type Job, ROLE_NAMES, type RoleName } from "../job/index.ts";
import { leastFeedOhms } from "./feed-ohms.ts";
import { type Presence, presenceIn } from "./presence.ts";
import { sharedFor } from "./shared.ts";

/** What the readings of one machine allow a cavity to be. */
export interface MeterEvidence {
  /** Roles that every reading allows; all of them while nothing is proved. */
  readonly fits: readonly RoleName[];
  /** Ids of the readings that prove something present; empty while none does. */
  readonly confirmedBy: readonly Id[];
  readonly sentence: string;
}

/** A feed under load: what fits is fed, or carries it through a contact, a load or a module. */
const WITH_FEED: readonly RoleName[] = [
  "supply",
  "switched-supply",
  "input",
  "output",
  "sensor-supply",
  "signal",
];

/** A solid return: ground, or one through a contact, a load of few ohms, or a module. */
const WITH_RETURN: readonly RoleName[] = [
  "ground",
  "switched-ground",
  "input",
  "output",
  "sensor-ground",
  "signal",
];

/** A dead feed that returns current through what hangs on it looks the same. */
const DEAD_FEED: readonly RoleName[] = ["supply", "switched-supply"];

/**
 * Puts the readings at a cavity together. Only presence counts: 0 V, OL and floating may be a fault
 * and narrow nothing; open-circuit volts come through one strand and narrow nothing either.
 */
export function meterEvidence(job: Job, machine: Id, cavity: CavityRef): MeterEvidence {
  const readings = job.machines.find((one) => one.id === machine)?.readings ?? [];
  const shared = sharedFor(job, machine);
  let fits: readonly RoleName[] = ROLE_NAMES;
  const confirmedBy: Id[] = [];
  const kinds = new Set<Presence["is"]>();
  for (const reading of readings) {
    const presence = presenceIn(shared, reading, cavity);
    if (!presence) continue;
    const allowed =
      presence.is === "feed"
        ? WITH_FEED
        : leastFeedOhms(shared, reading.when) > 2 * presence.ohmsAtMost + 2
          ? WITH_RETURN
          : [...WITH_RETURN, ...DEAD_FEED];
    fits = fits.filter((role) => allowed.includes(role));
    kinds.add(presence.is);
    confirmedBy.push(reading.id);
  }
  return { fits: fits.length > 0 ? fits : ROLE_NAMES, confirmedBy, sentence: sentenceOf(kinds) };
}

function sentenceOf(kinds: ReadonlySet<Presence["is"]>): string {
  if (kinds.size === 2) return "A feed in one state and a return in another: switched, or driven.";
  if (kinds.has("feed")) return "System voltage holds under load here: it is fed, not grounded.";
  if (kinds.has("return")) return "A solid way back is here: it is returned, not fed.";
  return "No reading yet shows anything present here; absence proves no role.";
}
