import { cpSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";
import { ROOT } from "./scripts/support/project.mjs";
import { sendFile } from "./scripts/support/static-files.mjs";

/** Folders that the app fetches from while it runs, by the path that it fetches them under. */
const SERVED: Readonly<Record<string, string>> = {
  "sample-data": "sample-data",
  // What the PDF reader needs for some files: character maps, fonts, image decoders, profiles.
  "pdfjs/cmaps": "node_modules/pdfjs-dist/cmaps",
  "pdfjs/standard_fonts": "node_modules/pdfjs-dist/standard_fonts",
  "pdfjs/wasm": "node_modules/pdfjs-dist/wasm",
  "pdfjs/iccs": "node_modules/pdfjs-dist/iccs",
  // The data of the reader of print: English, for its network alone.
  "ocr/data": "node_modules/@tesseract.js-data/eng/4.0.0_best_int",
};

const CORES = ["lstm", "simd-lstm", "relaxedsimd-lstm"].map(
  (kind) => `tesseract-core-${kind}.wasm.js`,
);

/** Single files that the app fetches while it runs, of folders that hold far more: path, then file. */
const SERVED_FILES: Readonly<Record<string, string>> = {
  "ocr/worker.min.js": "node_modules/tesseract.js/dist/worker.min.js",
  // Handed on with what they are the licences of, as Apache 2.0 asks.
  "ocr/LICENSE.md": "node_modules/tesseract.js/LICENSE.md",
  "ocr/worker.min.js.LICENSE.txt": "node_modules/tesseract.js/dist/worker.min.js.LICENSE.txt",
  "ocr/core/LICENSE": "node_modules/tesseract.js-core/LICENSE",
  ...Object.fromEntries(
    CORES.map((file) => [`ocr/core/${file}`, `node_modules/tesseract.js-core/${file}`]),
  ),
};

/** Serves those folders in development and copies them into the build. */
function servedFolders(): Plugin {
  let outDir = "";
  return {
    name: "pintruth-served-folders",
    configResolved: (config) => {
      outDir = resolve(config.root, config.build.outDir);
    },
    configureServer: (server) => {
      for (const [path, file] of Object.entries(SERVED_FILES)) {
        server.middlewares.use(`/${path}`, async (request, response, next) => {
          request.url = `/${basename(file)}`;
          if (!(await sendFile(join(ROOT, dirname(file)), request, response))) next();
        });
      }
      for (const [path, folder] of Object.entries(SERVED)) {
        server.middlewares.use(`/${path}`, async (request, response, next) => {
          if (!(await sendFile(join(ROOT, folder), request, response))) next();
        });
      }
    },
    writeBundle: () => {
      for (const [path, file] of Object.entries(SERVED_FILES)) {
        cpSync(join(ROOT, file), join(outDir, path));
      }
      for (const [path, folder] of Object.entries(SERVED)) {
        cpSync(join(ROOT, folder), join(outDir, path), { recursive: true });
      }
    },
  };
}

export default defineConfig({
  // Relative, so that the built folder works from any path of any server.
  base: "./",
  plugins: [react(), servedFolders()],
  worker: { format: "es" },
  build: { target: "es2022", chunkSizeWarningLimit: 1200 },
});
