import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { checkJob } from "../../src/check/index.ts";
import { execute } from "../../src/cli/execute.ts";
import { readJobText } from "../../src/job/index.ts";

const SWEEPER = "sample-data/sweeper/job.json";
const TRAILER = "sample-data/trailer-iso-12098/job.json";
let folder = "";

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "pintruth-cli-"));
});
afterAll(() => rm(folder, { recursive: true }));

async function call(...argv: string[]) {
  let out = "";
  let err = "";
  const status = await execute(argv, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += `${text}\n`;
    },
    today: () => "2026-11-25",
  });
  return { status, out, err };
}

async function fileOf(name: string, text: string): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, text);
  return path;
}

const sweeperText = () => readFile(SWEEPER, "utf8");

test("check answers 1 with contradictions and 0 without, one object a line, each with its file", async () => {
  const { status, out, err } = await call("check", "--json", TRAILER, SWEEPER);
  expect([status, err]).toEqual([1, ""]);
  const lines = out
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line));
  expect(lines.map((one) => [one.file, one.machine])).toEqual([
    [TRAILER, "trailer3"],
    [SWEEPER, "sweeper14"],
  ]);
  expect(Object.keys(lines[0])).toEqual(["file", "machine", "roles", "findings", "summary"]);
  expect((await call("check", "--json", TRAILER)).status).toBe(0);
});

test("check says what the core says, and the same of the archive", async () => {
  const job = readJobText(await sweeperText());
  if (!job.ok) throw new Error("the sample does not read");
  const { findings } = checkJob(job.value, "sweeper14");
  const beside = JSON.parse((await call("check", "--json", SWEEPER)).out);
  const archive = JSON.parse((await call("check", "--json", "sample-data/sweeper.pintruth")).out);
  expect(beside.findings).toEqual(JSON.parse(JSON.stringify(findings)));
  expect(archive.findings).toEqual(beside.findings);
});

test("a machine that is not there, an option that is not known, no command: 2 and one line", async () => {
  for (const argv of [
    ["check", SWEEPER, "--machine", "nobody"],
    ["check", SWEEPER, "--fast"],
    ["check", SWEEPER, "--out", "x.pdf"],
    ["check"],
    ["mend", SWEEPER],
    [],
    ["sheet", SWEEPER, "--out", "x.docx"],
    ["convert", SWEEPER],
  ]) {
    const { status, out, err } = await call(...argv);
    expect([status, out], argv.join(" ")).toEqual([2, ""]);
    expect(err, argv.join(" ")).toMatch(/^[^\n]+\n$/);
  }
});

test("a bad file is answered with its name, the path to the fault and what to do", async () => {
  const job = JSON.parse(await sweeperText());
  job.diagram.wires[2].from = "A1:99";
  const path = await fileOf("dangling.json", JSON.stringify(job));
  const { status, err } = await call("check", "--json", path);
  expect(status).toBe(2);
  expect(err).toContain(path);
  expect(err).toContain("diagram.wires[2].from");
  expect(err.trimEnd().split("\n")).toHaveLength(1);
});

test("control characters out of a file reach no terminal", async () => {
  const job = JSON.parse(await sweeperText());
  job.title = "\u001b[2Jgone";
  const path = await fileOf("escape.json", JSON.stringify(job));
  const { out } = await call("check", path);
  expect(out).not.toContain("\u001b");
});

test("sheet writes a PDF and a CSV", async () => {
  const pdf = join(folder, "sheet.pdf");
  const csv = join(folder, "sheet.csv");
  expect((await call("sheet", SWEEPER, "--out", pdf, "--size", "Letter")).status).toBe(0);
  expect((await call("sheet", SWEEPER, "--out", csv)).status).toBe(0);
  expect((await readFile(pdf)).subarray(0, 5).toString()).toBe("%PDF-");
  expect(await readFile(csv, "utf8")).toContain("LEVEL IN");
});

test("convert there and back keeps the job and its picture", async () => {
  const archive = join(folder, "there.pintruth");
  const back = join(folder, "back.json");
  expect((await call("convert", SWEEPER, "--out", archive)).status).toBe(0);
  expect((await call("convert", archive, "--out", back)).status).toBe(0);
  const before = JSON.parse(await sweeperText());
  const after = JSON.parse(await readFile(back, "utf8"));
  const picture = after.diagram.sheets[0].image.file;
  expect(await readFile(join(folder, picture))).toEqual(
    await readFile(join("sample-data/sweeper", before.diagram.sheets[0].image.file)),
  );
  after.diagram.sheets[0].image.file = before.diagram.sheets[0].image.file;
  expect(after).toEqual(before);
});

test("predict gives every reading a verdict and every used cavity something to measure", async () => {
  const { status, out } = await call("predict", "--json", SWEEPER);
  expect(status).toBe(0);
  const { readings, cavities } = JSON.parse(out);
  const job = JSON.parse(await sweeperText());
  expect(readings.map((one: { id: string }) => one.id)).toEqual(
    job.machines[0].readings.map((one: { id: string }) => one.id),
  );
  const measured = new Set(cavities.map((one: { cavity: string }) => one.cavity));
  for (const { cavity } of job.links) expect(measured).toContain(cavity);
});

test("help names every command", async () => {
  const { status, out } = await call("--help");
  expect(status).toBe(0);
  for (const name of ["check", "predict", "sheet", "convert"]) expect(out).toContain(name);
});
