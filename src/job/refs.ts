import type { CavityRef, Id, PinId, PinRef, Probe } from "./types.ts";

export const pinRef = (part: Id, pin: PinId): PinRef => `${part}:${pin}`;

export const cavityRef = (plug: Id, mark: string): CavityRef => `${plug}:${mark}`;

/** Splits `owner:name` at its first colon: ids hold none, pin ids and marks may. */
export function splitRef(ref: string): { owner: Id; name: string } {
  const colon = ref.indexOf(":");
  return colon < 0
    ? { owner: ref, name: "" }
    : { owner: ref.slice(0, colon), name: ref.slice(colon + 1) };
}

export const ownerOf = (ref: string): Id => splitRef(ref).owner;

/** The three probes that are places of the machine and not a pin or a cavity. */
export const FIXED_PROBES = ["battery+", "battery-", "chassis"] as const;

export const isFixedProbe = (probe: Probe): probe is (typeof FIXED_PROBES)[number] =>
  (FIXED_PROBES as readonly string[]).includes(probe);
