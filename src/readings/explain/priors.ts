import type { FaultMode, Law } from "../../circuit/index.ts";

/**
 * What fails first. The order is Kuphaldt's ("Lessons in Electric Circuits", vol. 1, basic
 * troubleshooting strategies: wire connections, power supply, active parts, passive parts; opens
 * outnumber shorts); the numbers that stand for it are our own and no probabilities.
 */
const CONNECTION = 8;
const SUPPLY = 4;
const ACTIVE = 2;
const PASSIVE = 1;

/** Weight of what fails: a wire or joint (null), or a part by what it does between its pins. */
export function weightOf(law: Law["is"] | null): number {
  switch (law) {
    case null:
      return CONNECTION;
    case "protection":
    case "source":
      return SUPPLY;
    case "contact":
    case "relay-contact":
    case "coil":
    case "module-path":
    case "diode":
    case "led":
      return ACTIVE;
    case "load":
    case "resistor":
    case "sender":
    case "track":
    case "wiper":
      return PASSIVE;
  }
}

/** Weight of how it fails: opens before shorts, shorts before what seldom happens (our own numbers). */
export const WEIGHT_OF_MODE: Readonly<Record<FaultMode, number>> = {
  open: 4,
  "high-resistance": 4,
  "stuck-open": 4,
  dead: 3,
  "stuck-closed": 1.5,
  shorted: 1,
  grounded: 1,
  leaky: 0.6,
  bridged: 0.5,
  "shorted-to-supply": 0.4,
};
