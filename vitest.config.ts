import react from "@vitejs/plugin-react";
import { defineConfig } from "vitest/config";

export default defineConfig({
  plugins: [react()],
  test: {
    testTimeout: 30_000,
    // Two cores and several browsers' worth of code: one worker a core, and no more.
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: "core",
          environment: "node",
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/editor/**"],
          setupFiles: ["tests/support/seed.ts"],
        },
      },
      {
        extends: true,
        test: {
          name: "editor",
          environment: "jsdom",
          include: ["tests/editor/**/*.test.{ts,tsx}"],
          // Konva asks for a 2D context as soon as it is imported; jsdom has none.
          setupFiles: ["vitest-canvas-mock", "tests/support/seed.ts"],
        },
      },
    ],
  },
});
