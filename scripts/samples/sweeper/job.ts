import type { Job } from "../../../src/job/index.ts";
import { AGED } from "../ageing/age.ts";
import { tracedOver } from "../drawing/job-diagram.ts";
import { MACHINE } from "./machine.ts";
import { SHEET } from "./parts.ts";
import { SWEEPER_PLAN } from "./plan.ts";
import { LINKS, X1 } from "./plug.ts";
import { SWEEPER_IMAGE } from "./scan.ts";

const { width, height } = SWEEPER_PLAN;
const sheets: Job["diagram"]["sheets"] = [
  { id: SHEET, title: "Water pump hold", image: { file: SWEEPER_IMAGE, width, height } },
];

/** The demo: traced, matched and metered. */
export const sweeperJob = (): Job => ({
  format: "pintruth-job",
  version: 1,
  title: "Sweeper 14 · water pump",
  systemVoltage: 24,
  diagram: { sheets, ...tracedOver(SWEEPER_PLAN, AGED.skew) },
  plugs: [X1],
  links: LINKS,
  machines: [MACHINE],
});

const { recordings: _, ...BARE } = MACHINE;

/** The same scan brought in, and nothing traced yet. */
export const blankJob = (): Job => ({
  format: "pintruth-job",
  version: 1,
  title: "Sweeper 14, not traced",
  systemVoltage: 24,
  diagram: { sheets, parts: [], wires: [] },
  plugs: [],
  links: [],
  machines: [{ ...BARE, wires: [], readings: [], trials: [] }],
});
