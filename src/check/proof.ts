import type { Id } from "../job/index.ts";
import type { Found } from "./rule.ts";

/** The path of a finding, each id once; nothing at all where there is none. */
export const provedBy = (ids: readonly Id[]): Pick<Found, "because"> =>
  ids.length === 0 ? {} : { because: [...new Set(ids)] };
