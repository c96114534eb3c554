/** The readings that a careful mechanic takes: places, conditions, instruments. */
import type { Random } from "../../../src/base/index.ts";
import type { When } from "../../../src/job/index.ts";
import type { Setup } from "./meter.ts";
import type { PaperJob, TruePin } from "./paper-job.ts";

const ownerOf = (ref: string) => ref.slice(0, ref.indexOf(":"));

type Tied = TruePin & { readonly cavity: string };

export function someSetup(random: Random, paper: PaperJob): Setup {
  const battery = paper.job.diagram.parts.find(({ kind }) => kind === "battery")?.id ?? "";
  const tied = paper.pins.filter((pin): pin is Tied => pin.cavity !== null);
  const { pin, cavity } = random.pick(tied);
  const when: When = { switches: someSwitches(random, paper) };
  const unplugged = [ownerOf(pin)];
  const lampAt = tied.filter(({ bearsLamp }) => bearsLamp);
  const ohmsAt = tied.filter(({ isOhmic }) => isOhmic);
  switch (random.below(9)) {
    case 0:
    case 1:
      return { quantity: "volts", red: cavity, black: "chassis", when: { ...when, unplugged } };
    case 2: {
      const at = random.pick(lampAt);
      const bare: When = { ...when, unplugged: [ownerOf(at.pin)] };
      return { quantity: "volts", red: at.cavity, black: "chassis", when: bare, with: "test-lamp" };
    }
    case 3: {
      const at = random.pick(lampAt);
      const bare: When = { ...when, unplugged: [ownerOf(at.pin)] };
      const ends = { red: "battery+", black: at.cavity };
      return { quantity: "volts", ...ends, when: bare, with: "test-lamp" };
    }
    case 4: {
      const at = random.pick(ohmsAt);
      const dead: When = { ...when, unplugged: [ownerOf(at.pin)], removed: [battery] };
      return { quantity: "ohms", red: at.cavity, black: "chassis", when: dead };
    }
    case 5:
      return { quantity: "volts", red: cavity, black: "chassis", when };
    case 6: {
      const ground = tied.find(({ inside }) => inside === "ground");
      const red = ground?.cavity ?? cavity;
      return { quantity: "drop", red, black: "battery-", when };
    }
    case 7: {
      const { fuse, part } = random.pick(paper.freeLoads);
      return random.chance(0.5)
        ? { quantity: "volts", red: `${part}:1`, black: `${part}:2`, when }
        : {
            quantity: "amps",
            red: `${fuse}:1`,
            black: `${fuse}:2`,
            when: { ...when, removed: [fuse] },
          };
    }
    default:
      return { quantity: "volts", red: "battery+", black: "battery-", when };
  }
}

/** The key in some position, and some of the other switches. */
function someSwitches(random: Random, { job }: PaperJob): Record<string, string> {
  const switches: Record<string, string> = {};
  for (const part of job.diagram.parts) {
    if (part.kind !== "switch") continue;
    if (part.control === "key" ? random.chance(0.7) : random.chance(0.3))
      switches[part.id] = random.pick(part.positions);
  }
  return switches;
}
