import { fileURLToPath } from "node:url";

/** The project's own folder, absolute, with a separator at its end. */
export const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** Progress goes to stderr: stdout belongs to the one line or the JSON that a caller asked for. */
export function say(/** @type {string} */ text) {
  process.stderr.write(`${text}\n`);
}
