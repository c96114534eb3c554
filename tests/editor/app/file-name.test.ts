import { expect, test } from "vitest";
import { fileNameFor } from "../../../src/editor/app/file-transfer.ts";

test("a title becomes a file name that every system takes", () => {
  expect(fileNameFor("Sweeper 14 · water pump", ".pintruth")).toBe(
    "Sweeper 14 · water pump.pintruth",
  );
  expect(fileNameFor('../a\\b:c*?"<>|', ".json")).toBe("a b c.json");
  expect(fileNameFor("   ", ".json")).toBe("job.json");
});
