import fc from "fast-check";
import { strToU8 } from "fflate";
import { describe, expect, test } from "vitest";
import { readJobFile, readJobText, readStoredJobText, writeJobText } from "../../src/job/index.ts";
import { CLIMBING } from "./climbing-paths.ts";
import { ofBytes, ofText, timed } from "./refusal.ts";
import { looseJob, smallJob } from "./small-job.ts";

const MB = 1024 * 1024;
/** Milliseconds on a busy machine; a fraction of a second on an idle one. */
const QUICK = 15_000;

describe("text that is cut short or is no job", () => {
  test("every truncation of a job is refused, and never as something else's fault", () => {
    const text = writeJobText(smallJob()).trimEnd();
    for (let length = 0; length < text.length; length++) {
      expect(["cut-short", "empty"]).toContain(ofText(text.slice(0, length)).code);
    }
  });

  test.each([
    ["", "empty"],
    [" \n\t", "empty"],
    ["null", "not-an-object"],
    ["[]", "not-an-object"],
    ["42", "not-an-object"],
    ['"a job"', "not-an-object"],
    ["{}", "wrong-format"],
    ['{"format": "pintruth-job"}', "wrong-version"],
    ["{} {}", "not-json"],
    ["{'format': 1}", "not-json"],
    ["]]]]", "not-json"],
    ["<html>", "not-json"],
  ])("%j: %s", (text, code) => {
    expect(ofText(text).code).toBe(code);
  });

  test("where the text stops being JSON is told by line and column", () => {
    expect(ofText('{\n  "format": "pintruth-job",\n  oops\n}').message).toContain(
      "line 3, column 3",
    );
  });

  test("bytes that are no UTF-8", () => {
    const bytes = strToU8(writeJobText(smallJob()));
    bytes[bytes.indexOf(0x50)] = 0xff;
    expect(ofBytes(bytes, "job.json").code).toBe("not-utf8");
    const wide = new Uint8Array(Buffer.from(writeJobText(smallJob()), "utf16le"));
    expect(ofBytes(wide, "job.json").code).toBe("not-utf8");
  });

  test("a replacement character that was really written is no fault", () => {
    const bytes = strToU8(writeJobText({ ...smallJob(), title: "\ufffd" }));
    expect(ofBytes(bytes, "job.json").code).toBe("ok");
  });
});

describe("size and nesting are refused before parsing, quickly", () => {
  test.each([
    ["100 MB of opening brackets", () => "[".repeat(100 * MB), "too-large"],
    ["60 MB of opening brackets", () => "[".repeat(60 * MB), "too-deep"],
    ["60 MB of objects in objects", () => '{"a":'.repeat(12 * MB), "too-deep"],
    ["5 million empty objects", () => `[${"{},".repeat(5 * MB)}{}]`, "too-many-values"],
    ["65 levels, closed", () => "[".repeat(65) + "]".repeat(65), "too-deep"],
  ])("%s", (_what, make, code) => {
    const text = make();
    let found = "";
    const took = timed(() => {
      found = ofText(text).code;
    });
    expect(found).toBe(code);
    expect(took).toBeLessThan(QUICK);
  });

  test("as bytes, 100 MB are refused without being decoded", () => {
    const bytes = new Uint8Array(100 * MB).fill(0x5b);
    expect(timed(() => expect(ofBytes(bytes, "job.json").code).toBe("too-large"))).toBeLessThan(
      500,
    );
  });

  test("brackets in words do not count", () => {
    const job = { ...smallJob(), title: `${"[{".repeat(200)}\\"` };
    expect(ofText(JSON.stringify(job)).code).toBe("ok");
  });

  test.each([
    ["parts", (job: ReturnType<typeof looseJob>, bad: unknown[]) => (job.diagram.parts = bad)],
    ["wires", (job: ReturnType<typeof looseJob>, bad: unknown[]) => (job.diagram.wires = bad)],
    [
      "pins of one module",
      (job: ReturnType<typeof looseJob>, bad: unknown[]) => (job.diagram.parts[3].pins = bad),
    ],
    [
      "points of one path",
      (job: ReturnType<typeof looseJob>, bad: unknown[]) => (job.diagram.wires[1].path = bad),
    ],
    [
      "trials of one machine",
      (job: ReturnType<typeof looseJob>, bad: unknown[]) => (job.machines[0].trials = bad),
    ],
  ])("hundreds of thousands of wrong %s are reported as a few", (_what, spoil) => {
    const job = looseJob();
    spoil(job, Array(300_000).fill({}));
    const text = JSON.stringify(job);
    const took = timed(() => {
      const read = readJobText(text);
      expect(read.ok ? 0 : read.issues.length).toBe(50);
    });
    expect(took).toBeLessThan(QUICK);
  });

  test("a module of very many pins and as many wires to them is no slower than its size", () => {
    const job = looseJob();
    const count = 20_000;
    job.diagram.parts[3].pins = Array.from({ length: count }, (_, n) => ({ id: `${n + 1}` }));
    job.diagram.wires = Array.from({ length: count }, (_, n) => ({
      id: `W${n}`,
      from: `A1:${n + 1}`,
      to: "XD1:1",
    }));
    const text = JSON.stringify(job);
    expect(timed(() => expect(ofText(text).code).toBe("ok"))).toBeLessThan(QUICK);
  });
});

describe("keys that reach a prototype", () => {
  test.each([
    ['{"__proto__": {"admin": true}, ', "__proto__"],
    ['{"\\u005f_proto__": {"admin": true}, ', "__proto__"],
    ['{"x": [{"y": {"constructor": {"prototype": {}}}}], ', "x[0].y.constructor"],
    ['{"prototype": 1, ', "prototype"],
  ])("are refused with their place: %s", (start, path) => {
    const text = start + JSON.stringify(smallJob()).slice(1);
    expect(ofText(text)).toMatchObject({ code: "key-not-allowed", path });
    expect(({} as { admin?: boolean }).admin).toBeUndefined();
  });

  test("as a switch's name in a reading too", () => {
    const text = JSON.stringify(smallJob()).replace('"S1":"on"', '"__proto__":"on"');
    expect(ofText(text)).toMatchObject({
      code: "key-not-allowed",
      path: "machines[0].readings[0].when.switches.__proto__",
    });
  });
});

test("a number that overflows is refused with its place, in unknown fields too", () => {
  const text = JSON.stringify({ ...smallJob(), extra: [0, 12345] }).replace("12345", "1e999");
  expect(ofText(text)).toMatchObject({ code: "number-too-large", path: "extra[1]" });
});

describe("a number that nothing on a machine comes near", () => {
  const withVolts = (volts: number) => {
    const job = looseJob();
    const placed = { sheet: job.diagram.sheets[0].id, at: [0, 0], turn: 0 };
    job.diagram.parts.push({ kind: "battery", id: "G99", ...placed, volts });
    return JSON.stringify(job);
  };

  test.each([1e308, 1e13, 1e-320])("%d V is refused in a file, and named", (volts) => {
    const found = ofText(withVolts(volts));
    expect(found).toMatchObject({ code: "number-out-of-bounds" });
    expect(found?.message).toMatch(/^"volts" of part G99 is .*, which /);
  });

  test("the bounds themselves and nothing at all are numbers like any other", () => {
    for (const volts of [1e12, 1e-12, 0]) expect(readJobText(withVolts(volts)).ok).toBe(true);
  });

  test("keeps nobody from a job that the program stored itself", () => {
    expect(readStoredJobText(withVolts(1e308)).ok).toBe(true);
    expect(readStoredJobText(withVolts(-1)).ok).toBe(false);
  });
});

describe("pictures that lie outside the job's own folder", () => {
  test.each(CLIMBING)("a sheet's: %j", (file) => {
    const job = looseJob();
    job.diagram.sheets[0].image.file = file;
    const found = ofText(JSON.stringify(job));
    expect(found).toMatchObject({ code: "picture-path", path: "diagram.sheets[0].image.file" });
  });

  test("a plug's, a part's and a retrofit's", () => {
    const job = looseJob();
    const file = "../a.png";
    job.plugs[0].photo = { file, width: 1, height: 1, at: [0, 0], mmPerPixel: 1 };
    job.diagram.parts[0].photo = file;
    const lamp = { id: "E9", kind: "lamp", sheet: "sheet1", at: [0, 0], turn: 0, photo: file };
    job.machines[0].changes = [{ note: "beacon", parts: [lamp] }];
    const read = readJobText(JSON.stringify(job));
    expect(read.ok ? [] : read.issues.map(({ path }) => path)).toEqual([
      "diagram.parts[0].photo",
      "plugs[0].photo.file",
      "machines[0].changes[0].parts[0].photo",
    ]);
  });

  test.each(["scan.png", "./images/scan.png", "a b/Größe (1).png", "..scan.png"])(
    "but %j is inside it",
    (file) => {
      const job = looseJob();
      job.diagram.sheets[0].image.file = file;
      expect(ofText(JSON.stringify(job)).code).toBe("ok");
    },
  );
});

test("script in names and words is kept as the text it is", () => {
  const script = `<img src=x onerror="alert(1)">'; DROP TABLE jobs; --`;
  const job = looseJob();
  job.title = script;
  job.diagram.parts[3].pins[0].printed = script;
  job.machines[0].name = script;
  job.plugs[0].cavities[2].mark = script;
  const read = readJobText(JSON.stringify(job));
  expect(read).toStrictEqual({ ok: true, value: job });
});

test("arbitrary bytes never throw", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), fc.boolean(), (bytes, zip) => {
      const start = zip ? [0x50, 0x4b, 3, 4] : [];
      expect(readJobFile(new Uint8Array([...start, ...bytes]), "x").ok).toBe(false);
    }),
    { numRuns: 500 },
  );
});

test("arbitrary JSON in place of any field never throws, and what is accepted is written back", () => {
  const fields = ["title", "diagram", "plugs", "links", "machines", "standIns", "words"];
  fc.assert(
    fc.property(fc.constantFrom(...fields), fc.jsonValue(), (field, value) => {
      const read = readJobText(JSON.stringify({ ...smallJob(), [field]: value }));
      if (read.ok) expect(readJobText(writeJobText(read.value))).toEqual(read);
      else expect(read.issues.length).toBeGreaterThan(0);
    }),
    { numRuns: 500 },
  );
});
