#!/usr/bin/env node
// Runs the command line, building it first when it is missing or older than its sources.
// Everything said on the way goes to stderr: stdout is for the answer alone.
import "../scripts/support/node-version.mjs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { CLI, ensureBuilt } from "../scripts/support/bundle.mjs";
import { ensureInstalled } from "../scripts/support/install.mjs";
import { ROOT } from "../scripts/support/project.mjs";

if (!(await ensureInstalled()) || !(await ensureBuilt(CLI, { quiet: true }))) process.exit(2);

const { main } = await import(pathToFileURL(join(ROOT, CLI.folder, "main.js")).href);
process.exitCode = await main(process.argv.slice(2));
