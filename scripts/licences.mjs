// Part of npm run lint: fails when a package is under a licence that this project cannot take.
import { unsuitableLicences } from "./support/licences.mjs";

const bad = unsuitableLicences();
for (const line of bad) console.error(`licence not suitable: ${line}`);
if (bad.length === 0) console.log("Every package is under a suitable licence.");
process.exit(bad.length === 0 ? 0 : 1);
