// node --expose-gc run-bench.mjs BUNDLE OUT: runs one benchmark by itself, so that none inherits
// another's heap, and writes what it found as JSON.
import { writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const [bundle = "", out = ""] = process.argv.slice(2);
const { default: bench } = await import(pathToFileURL(bundle).href);
const rows = await bench.run();
writeFileSync(out, JSON.stringify({ title: bench.title, about: bench.about, rows }));
// A benchmark may leave a browser's connection behind; it has said all it had to say.
process.exit(0);
