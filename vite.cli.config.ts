import { defineConfig } from "vite";

/** The command line as one module for Node; packages stay in node_modules and are imported there. */
export default defineConfig({
  publicDir: false,
  build: {
    ssr: "src/cli/main.ts",
    target: "node20",
    minify: false,
    rolldownOptions: { output: { entryFileNames: "main.js" } },
  },
});
