import { ROLES } from "../words.ts";
import { type Disagreement, wiredPins } from "./disagreement.ts";

export const ADOPTED_ROLES: readonly Disagreement[] = [
  {
    name: "a role adopted that the circuit has not",
    inject(random, paper) {
      const known = wiredPins(paper).filter(({ fits }) => fits.length === 1);
      if (known.length === 0) return null;
      const { pin, fits } = random.pick(known);
      const role = random.pick(ROLES.filter((one) => !fits.includes(one)));
      paper.job.adopted = [{ pin, role }];
      return [`adopted-role-contradicted ${pin}`];
    },
  },
];
