// npm start [-- --port N] [-- --host ADDRESS]: installs, builds, serves, prints one line with the
// app's URL, and goes on until Ctrl-C. Works on a bare clone: everything imported here is Node's own.
import "./support/node-version.mjs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { APP, ensureBuilt } from "./support/bundle.mjs";
import { ensureInstalled } from "./support/install.mjs";
import { ROOT, say } from "./support/project.mjs";
import { serveFolder } from "./support/static-files.mjs";

const DEFAULT_PORT = 4500;

const { host, port: asked } = options();
const port = Number(asked);
if (!Number.isInteger(port) || port < 1 || port > 65535) {
  say(`--port wants a whole number from 1 to 65535, not "${asked}"`);
  process.exit(2);
}

if (!(await ensureInstalled()) || !(await ensureBuilt(APP))) process.exit(1);

try {
  const server = await serveFolder(join(ROOT, APP.folder), { port, host });
  const stop = () => {
    server.close().then(() => process.exit(0));
  };
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
  console.log(`Pintruth is at ${server.url}`);
} catch (error) {
  say(error instanceof Error ? error.message : String(error));
  process.exit(1);
}

/** What the command line asks for; says how to ask and ends when it can't be read. */
function options() {
  try {
    const { values } = parseArgs({
      options: {
        port: { type: "string", default: process.env.PORT ?? String(DEFAULT_PORT) },
        host: { type: "string", default: "127.0.0.1" },
      },
    });
    return values;
  } catch (error) {
    say(error instanceof Error ? error.message : String(error));
    say("Usage: npm start [-- --port NUMBER] [-- --host ADDRESS]");
    process.exit(2);
  }
}
