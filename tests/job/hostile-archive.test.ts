import { deflateRawSync } from "node:zlib";
import fc from "fast-check";
import { strToU8, type Zippable, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { missingPictures, readJobFile, writeJobText, writePintruth } from "../../src/job/index.ts";
import { CLIMBING } from "./climbing-paths.ts";
import { png } from "./pictures.ts";
import { ofBytes, refusal, timed } from "./refusal.ts";
import { smallJob } from "./small-job.ts";

const MB = 1024 * 1024;
/** Milliseconds on a busy machine; a fraction of a second on an idle one. */
const QUICK = 15_000;

const goodArchive = () =>
  writePintruth(
    smallJob(),
    new Map([["images/scan.png", { bytes: png(3, 2), type: "image/png" }]]),
  );

const archiveOf = (files: Zippable) =>
  zipSync({ "job.json": strToU8(writeJobText(smallJob())), ...files });

describe("archives", () => {
  test.each(CLIMBING.filter((path) => path !== "."))("an archive's entry: %j", (name) => {
    expect(ofBytes(archiveOf({ [name]: png(3, 2) })).code).toBe("archive-path");
  });

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
    expect(timed(() => expect(ofBytes(bomb).code).toBe("archive-bomb"))).toBeLessThan(QUICK);
  });

  test("a bomb that declares a small size is unpacked no further than that", () => {
    const packed = deflateRawSync(new Uint8Array(200 * MB));
    const bomb = lyingArchive(packed, 1000);
    const took = timed(() => expect(ofBytes(bomb)).toMatchObject({ code: "damaged-archive" }));
    expect(took).toBeLessThan(QUICK);
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
