import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { jobJsonSchema } from "../../src/job/index.ts";

test("the published JSON Schema is the one that reading uses (else: npm run schema)", () => {
  const published = readFileSync(new URL("../../docs/job.schema.json", import.meta.url), "utf8");
  expect(JSON.parse(published)).toEqual(JSON.parse(JSON.stringify(jobJsonSchema())));
});
