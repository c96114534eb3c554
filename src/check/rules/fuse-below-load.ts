import { defineRule } from "../rule.ts";
import { capital, nameOf } from "../words.ts";

/** What is no more than this share above the fuse is a matter of rounding, not of a wrong fuse. */
const ROUNDING = 1.001;

export const fuseBelowLoad = defineRule({
  id: "fuse-below-load",
  severity: "warning",
  about: "fuse",
  find: ({ part, amps, loads, drawn, systemVoltage }) =>
    drawn <= amps * ROUNDING
      ? []
      : [
          {
            subjects: [part.id, ...loads.map(({ id }) => id)],
            message: `${capital(nameOf(part))} has ${amps} A, and ${
              loads.length === 1 ? "" : "together "
            }${loads.map(nameOf).join(" and ")} ${
              loads.length === 1 ? "draws" : "draw"
            } at least ${drawn.toFixed(1)} A at ${systemVoltage} V. Read the fuse and the ${
              loads.length === 1 ? "load" : "loads"
            } again: one of them is not what the drawing says.`,
            because: [part.id, ...loads.map(({ id }) => id)],
          },
        ],
});
