// Imported first by every entry, so that an old Node is told so before it meets syntax or
// packages that it does not understand.
import { readFileSync } from "node:fs";

const manifest = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
const wanted = manifest.engines.node.replace(/^>=/, "");
const number = (/** @type {string} */ version) => {
  const [major = 0, minor = 0] = version.split(".").map(Number);
  return major * 1000 + minor;
};

if (number(process.versions.node) < number(wanted)) {
  console.error(
    `Pintruth needs Node ${wanted} or later, and this is Node ${process.versions.node}. ` +
      "Install a current Node and run the same command again.",
  );
  process.exit(1);
}
