import { deflateRawSync } from "node:zlib";
import fc from "fast-check";
import { strToU8, type Zippable, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import {
  missingPictures,
  readJobFile,
  readJobText,
  writeJobText,
  writePintruth,
} from "../../src/job/index.ts";
import { png } from "./pictures.ts";
import { looseJob, smallJob } from "./small-job.ts";

const MB = 1024 * 1024;

/** Code, path and message of the first issue, after checking that every issue is a full sentence. */
function refusal(read: ReturnType<typeof readJobFile> | ReturnType<typeof readJobText>) {
  if (read.ok) return { code: "ok", path: "", message: "" };
  for (const { message } of read.issues) {
    expect(message).toMatch(/^\S.{10,}[:;] .+$/);
    expect(message.length).toBeLessThan(600);
  }
  const { code = "", path = "", message = "" } = read.issues[0] ?? {};
  return { code, path, message };
}

const ofText = (text: string) => refusal(readJobText(text));
const ofBytes = (bytes: Uint8Array, name = "job.pintruth") => refusal(readJobFile(bytes, name));

/** Milliseconds that `work` takes. */
function timed(work: () => void): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

const goodArchive = () =>
  writePintruth(
    smallJob(),
    new Map([["images/scan.png", { bytes: png(3, 2), type: "image/png" }]]),
  );

const archiveOf = (files: Zippable) =>
  zipSync({ "job.json": strToU8(writeJobText(smallJob())), ...files });

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
    ["10 million empty objects", () => `[${"{},".repeat(10 * MB)}{}]`, "too-many-values"],
    ["65 levels, closed", () => "[".repeat(65) + "]".repeat(65), "too-deep"],
  ])("%s", (_what, make, code) => {
    const text = make();
    let found = "";
    const took = timed(() => {
      found = ofText(text).code;
    });
    expect(found).toBe(code);
    expect(took).toBeLessThan(5_000);
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
    expect(took).toBeLessThan(20_000);
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
    expect(timed(() => expect(ofText(text).code).toBe("ok"))).toBeLessThan(20_000);
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

describe("pictures that lie outside the job's own folder", () => {
  const PATHS = [
    "../secret.png",
    "images/../../secret.png",
    "/etc/secret.png",
    "C:/secret.png",
    "C:secret.png",
    "..\\secret.png",
    "images\\secret.png",
    "\\\\server\\share\\secret.png",
    "file:///etc/secret.png",
    "https://example.com/secret.png",
    "images/a.png\u0000.txt",
    "images//a.png",
    "..",
    ".",
    "images/..",
  ];

  test.each(PATHS)("a sheet's: %j", (file) => {
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

  test.each(PATHS.filter((path) => path !== "."))("an archive's entry: %j", (name) => {
    expect(ofBytes(archiveOf({ [name]: png(3, 2) })).code).toBe("archive-path");
  });
});

describe("archives", () => {
  test("every truncation is refused", () => {
    const bytes = goodArchive();
    for (let length = 0; length < bytes.length; length++) {
      expect(ofBytes(bytes.slice(0, length)).code).not.toBe("ok");
    }
  });

  test("a changed byte gives the same job or a refusal, never a crash or another job", () => {
    const bytes = goodArchive();
    const whole = readJobFile(bytes, "job.pintruth");
    const byte = fc.integer({ min: 1, max: 255 });
    fc.assert(
      fc.property(fc.nat(bytes.length - 1), byte, (at, change) => {
        const damaged = bytes.slice();
        damaged[at] = (damaged[at] ?? 0) ^ change;
        const read = readJobFile(damaged, "job.pintruth");
        if (!read.ok) expect(refusal(read).code).not.toBe("ok");
        else if (read.value.pictures.size > 0) expect(read).toEqual(whole);
        else
          expect({ ok: true, value: { job: read.value.job } }).toEqual({
            ok: true,
            value: { job: smallJob() },
          });
      }),
      { numRuns: 1_000 },
    );
  });

  test("a deflate bomb is refused by what it declares, unopened", () => {
    const bomb = zipSync({ "job.json": new Uint8Array(60 * MB) });
    expect(bomb.length).toBeLessThan(MB);
    expect(timed(() => expect(ofBytes(bomb).code).toBe("archive-bomb"))).toBeLessThan(1_000);
  });

  test("a bomb that declares a small size is unpacked no further than that", () => {
    const packed = deflateRawSync(new Uint8Array(200 * MB));
    const bomb = lyingArchive(packed, 1000);
    const took = timed(() => expect(ofBytes(bomb)).toMatchObject({ code: "damaged-archive" }));
    expect(took).toBeLessThan(3_000);
  });

  test("a size that lies below or above the truth is damage", () => {
    const text = strToU8(writeJobText(smallJob()));
    const packed = deflateRawSync(text);
    expect(ofBytes(lyingArchive(packed, text.length)).message).toContain("cannot be unpacked");
    expect(ofBytes(lyingArchive(packed, text.length + 1)).code).toBe("damaged-archive");
    expect(ofBytes(lyingArchive(packed, text.length - 1)).code).toBe("damaged-archive");
  });

  test("many files, each below the limits, that are too much together", () => {
    const entry = { packed: new Uint8Array(1), size: MB };
    const entries = Array.from({ length: 600 }, (_, n) => ({ ...entry, name: `images/${n}` }));
    expect(ofBytes(rawArchive(entries)).code).toBe("archive-bomb");
  });

  test("more files than any job has", () => {
    const files = Object.fromEntries(
      Array.from({ length: 2_001 }, (_, n) => [`images/${n}`, new Uint8Array(1)]),
    );
    expect(ofBytes(archiveOf(files)).code).toBe("too-many-files");
  });

  test("a job.json larger than a job, though well packed", () => {
    const big = new Uint8Array(70 * MB).map((_, n) => 0x20 + (((n * n) >> 7) % 64));
    expect(ofBytes(zipSync({ "job.json": [big, { level: 0 }] })).code).toBe("too-large");
  });

  test("two files of one name", () => {
    const bytes = archiveOf({ "job.jsoM": strToU8("{}") });
    for (let at = 0; at < bytes.length - 8; at++) {
      if (Buffer.from(bytes.subarray(at, at + 8)).toString() === "job.jsoM") bytes[at + 7] = 0x6e;
    }
    expect(ofBytes(bytes).message).toContain("twice");
  });

  test("no job.json, and a file that is no archive under an archive's name", () => {
    expect(ofBytes(zipSync({ "readme.txt": strToU8("hello") })).code).toBe("no-job-in-archive");
    expect(ofBytes(strToU8(writeJobText(smallJob()))).code).toBe("not-an-archive");
    expect(ofBytes(new Uint8Array()).code).toBe("empty");
  });

  test("pictures that are none are named, with the place that refers to them", () => {
    const found = ofBytes(archiveOf({ "images/scan.png": strToU8("<script>alert(1)</script>") }));
    expect(found).toMatchObject({ code: "not-a-picture", path: "diagram.sheets[0].image.file" });
    expect(found.message).toContain("images/scan.png");
  });

  test("files that the job does not refer to are left where they are", () => {
    const picture = png(3, 2);
    const files = {
      "images/scan.png": picture,
      "__MACOSX/._job.json": strToU8("x"),
      "images/": new Uint8Array(),
    };
    const read = readJobFile(archiveOf(files), "job.pintruth");
    expect(read.ok && [...read.value.pictures.keys()]).toEqual(["images/scan.png"]);
  });

  test("a picture that is missing is no fault of the job", () => {
    const read = readJobFile(archiveOf({}), "job.pintruth");
    expect(read.ok && missingPictures(read.value.job, read.value.pictures)).toEqual([
      "images/scan.png",
    ]);
  });
});

interface RawEntry {
  readonly name: string;
  readonly packed: Uint8Array;
  /** Unpacked bytes, as its headers declare them. */
  readonly size: number;
}

/** An archive of deflated entries whose headers say whatever they are told to. */
function rawArchive(entries: readonly RawEntry[]): Uint8Array {
  const bodies: Buffer[] = [];
  const directory: Buffer[] = [];
  let at = 0;
  for (const { name, packed, size } of entries) {
    const local = Buffer.alloc(30);
    local.writeUInt32LE(0x04034b50, 0);
    local.writeUInt16LE(8, 8);
    local.writeUInt32LE(packed.length, 18);
    local.writeUInt32LE(size, 22);
    local.writeUInt16LE(name.length, 26);
    const central = Buffer.alloc(46);
    central.writeUInt32LE(0x02014b50, 0);
    central.writeUInt16LE(8, 10);
    central.writeUInt32LE(packed.length, 20);
    central.writeUInt32LE(size, 24);
    central.writeUInt16LE(name.length, 28);
    central.writeUInt32LE(at, 42);
    const body = Buffer.concat([local, Buffer.from(name, "latin1"), packed]);
    bodies.push(body);
    directory.push(central, Buffer.from(name, "latin1"));
    at += body.length;
  }
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(entries.length, 10);
  end.writeUInt32LE(at, 16);
  return new Uint8Array(Buffer.concat([...bodies, ...directory, end]));
}

const lyingArchive = (packed: Uint8Array, size: number) =>
  rawArchive([{ name: "job.json", packed, size }]);

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
