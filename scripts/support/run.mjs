import { spawn } from "node:child_process";
import { ROOT } from "./project.mjs";

/**
 * Runs a program in the project's folder and waits for it. What it prints goes to stderr unless
 * `stdout` says "inherit".
 *
 * @param {string} program
 * @param {readonly string[]} args
 * @param {{ env?: Record<string, string | undefined>, stdout?: "inherit" | "stderr", seconds?: number }} [options]
 *   `seconds`: ends the program after that long
 * @returns {Promise<number>} its exit status; 127 when it could not be started, 124 when it took too long
 */
export function run(program, args, options = {}) {
  return new Promise((resolve) => {
    const child = spawn(program, args, {
      cwd: ROOT,
      env: { ...process.env, ...options.env },
      stdio: ["ignore", options.stdout === "inherit" ? "inherit" : 2, 2],
      // Windows starts npm through a command file, which only a shell can run.
      shell: process.platform === "win32" && program === "npm",
    });
    let late = false;
    const timer =
      options.seconds === undefined
        ? undefined
        : setTimeout(() => {
            late = true;
            child.kill();
          }, options.seconds * 1000);
    child.once("error", () => {
      clearTimeout(timer);
      resolve(127);
    });
    child.once("exit", (code) => {
      clearTimeout(timer);
      resolve(late ? 124 : (code ?? 1));
    });
  });
}

/**
 * Runs a JavaScript file with the Node that runs this one.
 *
 * @param {readonly string[]} args the file first
 * @param {Parameters<typeof run>[2]} [options]
 */
export const runNode = (args, options) => run(process.execPath, args, options);
