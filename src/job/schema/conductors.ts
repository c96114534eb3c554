import { z } from "zod";
import { GAUGE_MAPPINGS, type GaugeMapping, INSULATIONS } from "../../standards/index.ts";

/** Which published table says what this machine's wires may carry. Nothing left out is assumed. */
export const conductorsSchema = z
  .looseObject({
    table: z.literal("33-cfr-183.425").describe("33 CFR 183.425 table 5").optional(),
    insulation: z
      .literal([...INSULATIONS])
      .optional()
      .describe("°C that the insulation stands: the column of the table"),
    engineSpace: z.boolean().optional().describe("the wires lie beside the engine: note 1"),
    bundled: z
      .number()
      .int()
      .min(1)
      .optional()
      .describe("conductors that carry current side by side in one bundle: note 2"),
    gauges: z
      .enum(Object.keys(GAUGE_MAPPINGS) as [GaugeMapping, ...GaugeMapping[]])
      .optional()
      .describe("which published mapping between gauge numbers and mm² counts"),
  })
  .meta({ id: "Conductors" });
