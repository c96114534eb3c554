/**
 * Property tests draw a new seed on every run, but for `npm test` where CI is set, and print it when
 * they fail. To replay one:
 * `PINTRUTH_SEED=123 npx vitest run tests/job/history.test.ts`.
 */
import fc from "fast-check";

const seed = process.env.PINTRUTH_SEED;
if (seed !== undefined) {
  if (!/^-?\d+$/.test(seed)) throw new Error(`PINTRUTH_SEED must be a whole number, not "${seed}"`);
  fc.configureGlobal({ seed: Number(seed) });
}
