/**
 * Rejects for a worker that never came up, with a sentence's end that says so. Errors inside a call
 * come back with the call; this is raced against the answers. The error is named `BrokenThread`. Never
 * resolves.
 */
export function neverUp(worker: Worker): Promise<never> {
  const broken = new Promise<never>((_, reject) => {
    worker.addEventListener("error", (event) =>
      reject(
        Object.assign(new Error(event.message || "its thread could not be started"), {
          name: "BrokenThread",
        }),
      ),
    );
  });
  // Nobody may be waiting for an answer when it breaks.
  broken.catch(() => {});
  return broken;
}
