// npm run schema: writes docs/job.schema.json from the schema that reading a job uses.
import "./support/node-version.mjs";
import { writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { runnerImport } from "vite";

const source = fileURLToPath(new URL("../src/job/json-schema.ts", import.meta.url));
const { module } = await runnerImport(source);
const text = `${JSON.stringify(module.jobJsonSchema(), null, 2)}\n`;
await writeFile(new URL("../docs/job.schema.json", import.meta.url), text);
console.log("docs/job.schema.json written");
