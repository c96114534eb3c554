import fc from "fast-check";
import { expect, test } from "vitest";
import {
  type Picture,
  readJobFile,
  readJobText,
  renameImages,
  writeJobText,
  writePintruth,
} from "../../src/job/index.ts";
import { arbitraryJob } from "./arbitrary-job.ts";
import { png } from "./pictures.ts";
import { looseJob, smallJob } from "./small-job.ts";

test("whatever job is written, the same job is read, unknown fields and all", () => {
  fc.assert(
    fc.property(arbitraryJob, (job) => {
      const read = readJobText(writeJobText(job));
      expect(read).toStrictEqual({ ok: true, value: job });
    }),
  );
});

test("and through an archive too, in which no picture is lost or changed", () => {
  const bytes = fc.uint8Array({ minLength: 0, maxLength: 50 });
  fc.assert(
    fc.property(arbitraryJob, bytes, (plain, tail) => {
      const picture = { bytes: new Uint8Array([...png(3, 2), ...tail]), type: "image/png" };
      const image = { file: "images/scan.png", width: 3, height: 2 };
      const sheets = [{ id: "sheet1", image }];
      const job = { ...plain, diagram: { ...plain.diagram, sheets } };
      const archive = writePintruth(job, new Map([[image.file, picture]]));
      const read = readJobFile(archive, "a.pintruth");
      expect(read).toStrictEqual({
        ok: true,
        value: { job, pictures: new Map([[image.file, picture]]) },
      });
    }),
  );
});

test("the same job gives the same text and the same archive", () => {
  const pictures = new Map<string, Picture>([
    ["images/scan.png", { bytes: png(3, 2), type: "image/png" }],
  ]);
  expect(writeJobText(smallJob())).toBe(writeJobText(smallJob()));
  expect(writePintruth(smallJob(), pictures)).toEqual(writePintruth(smallJob(), pictures));
});

test("written text is what JSON.stringify means, laid out for people", () => {
  const job = smallJob();
  const text = writeJobText(job);
  expect(JSON.parse(text)).toStrictEqual(JSON.parse(JSON.stringify(job)));
  expect(text).toContain('{ "pin": "A1:1", "cavity": "X1:1" }');
  expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(102);
});

test("fields that are undefined are not written", () => {
  const job = { ...smallJob(), words: undefined };
  expect(writeJobText(job)).toBe(writeJobText(smallJob()));
});

test("unknown fields keep their order and stay where they were, whatever depth", () => {
  const job = looseJob();
  job.diagram.parts[3].pins[0].maker = { notes: [1, null, { deep: "é" }] };
  job.machines[0].readings[0].when.weather = "rain";
  job["2 first"] = true;
  const text = writeJobText(job);
  const read = readJobText(text);
  expect(read.ok && writeJobText(read.value)).toBe(text);
});

test("pictures go below images/ under names that tell what they are", () => {
  const job = renameImages(smallJob(), new Map([["images/scan.png", "my scan.exe"]]));
  const picture = { bytes: png(3, 2), type: "image/png" };
  const read = readJobFile(writePintruth(job, new Map([["my scan.exe", picture]])), "a.pintruth");
  expect(read.ok && read.value.job.diagram.sheets[0]?.image?.file).toBe("images/my_scan.png");
  expect(read.ok && [...read.value.pictures.keys()]).toEqual(["images/my_scan.png"]);
});

test("two pictures never share a name, nor one that differs only in case", () => {
  const job = looseJob();
  job.plugs[0].photo = { file: "b/SCAN.png", width: 1, height: 1, at: [0, 0], mmPerPixel: 1 };
  const pictures = new Map<string, Picture>([
    ["images/scan.png", { bytes: png(3, 2), type: "image/png" }],
    ["b/SCAN.png", { bytes: png(4, 4), type: "image/png" }],
  ]);
  const read = readJobFile(writePintruth(job, pictures), "a.pintruth");
  expect(read.ok && read.value.pictures.size).toBe(2);
  expect(read.ok && read.value.job.plugs[0]?.photo?.file).toBe("images/SCAN-2.png");
});

test("a relay's further poles follow from the pins that its wires name", () => {
  const job = looseJob();
  job.diagram.wires.push({ id: "W9", from: "K1:30b", to: "A1:3" });
  const read = readJobText(JSON.stringify(job));
  const relay = read.ok && read.value.diagram.parts.find((part) => part.id === "K1");
  expect(relay).toMatchObject({ kind: "relay", poles: 2 });

  const added = { id: "K2", kind: "relay", sheet: "sheet1", at: [0, 0], turn: 0 };
  const wires = [{ id: "W8", from: "K2:87ac", to: "A1:3" }];
  job.machines[0].changes = [{ note: "beacon", parts: [added], wires }];
  const again = readJobText(JSON.stringify(job));
  const changed = again.ok && again.value.machines[0]?.changes?.[0]?.parts?.[0];
  expect(changed).toMatchObject({ id: "K2", poles: 3 });
});
