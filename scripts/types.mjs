// npm run types: every TypeScript configuration of the project, one after the other.
import "./support/node-version.mjs";
import { compiles, typeConfigs } from "./support/type-check.mjs";

let failed = false;
for (const config of typeConfigs()) {
  const good = await compiles(config);
  console.log(`${config}: ${good ? "compiles" : "does not compile"}`);
  failed ||= !good;
}
process.exit(failed ? 1 : 0);
