/**
 * The browser's store as a browser gets it: bundled with the browser's builds of its packages,
 * over an IndexedDB in memory.
 */
import "fake-indexeddb/auto";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "vite";

/** The part of a browser's FileReader that PouchDB uses. */
class FileReaderOverBlob {
  result: ArrayBuffer | string | null = null;
  onloadend: ((event: { target: FileReaderOverBlob }) => void) | null = null;

  readAsArrayBuffer(blob: Blob) {
    void blob.arrayBuffer().then((buffer) => this.end(buffer));
  }

  readAsBinaryString(blob: Blob) {
    void blob.arrayBuffer().then((buffer) => this.end(Buffer.from(buffer).toString("latin1")));
  }

  private end(result: ArrayBuffer | string) {
    this.result = result;
    this.onloadend?.({ target: this });
  }
}

export async function loadBrowserStore(): Promise<typeof import("./pouch-store.ts")> {
  const globals = globalThis as Record<string, unknown>;
  globals.self ??= globalThis;
  globals.navigator ??= { userAgent: "test" };
  globals.FileReader ??= FileReaderOverBlob;
  const built = await build({
    configFile: false,
    logLevel: "silent",
    publicDir: false,
    build: {
      write: false,
      minify: false,
      target: "es2022",
      lib: {
        entry: fileURLToPath(new URL("./pouch-store.ts", import.meta.url)),
        formats: ["es"],
      },
    },
  });
  const [output] = Array.isArray(built) ? built : [built];
  if (!output || !("output" in output)) throw new Error("the store was not built");
  const folder = await mkdtemp(join(tmpdir(), "pintruth-store-"));
  const file = join(folder, "pouch.mjs");
  await writeFile(file, output.output[0].code);
  try {
    return await import(/* @vite-ignore */ pathToFileURL(file).href);
  } finally {
    await rm(folder, { recursive: true });
  }
}
