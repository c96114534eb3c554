// npm run build: the app into dist/, the command line into dist-cli/.
import "./support/node-version.mjs";
import { APP, CLI, ensureBuilt } from "./support/bundle.mjs";
import { ensureInstalled } from "./support/install.mjs";

const done = (await ensureInstalled()) && (await ensureBuilt(APP)) && (await ensureBuilt(CLI));
process.exit(done ? 0 : 1);
