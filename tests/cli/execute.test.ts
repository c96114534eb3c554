import { mkdir, mkdtemp, readFile, rm, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { checkJob } from "../../src/check/index.ts";
import { readJobText } from "../../src/job/index.ts";
import { call } from "./call.ts";

const SWEEPER = "sample-data/sweeper/job.json";
const TRAILER = "sample-data/trailer-iso-12098/job.json";
let folder = "";

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "pintruth-cli-"));
});
afterAll(() => rm(folder, { recursive: true }));

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

test("every bad file is told, and nothing is said of the good ones", async () => {
  const one = await fileOf("one.json", (await sweeperText()).slice(0, 300));
  const two = await fileOf("two.json", "[]");
  const { status, out, err } = await call("check", "--json", SWEEPER, one, two);
  expect([status, out]).toEqual([2, ""]);
  expect(err.trimEnd().split("\n")).toEqual([
    expect.stringContaining("one.json: the file ends in the middle"),
    expect.stringContaining("two.json: the file holds no job"),
  ]);
});

test("several machines: an object a line, or the one that is asked for", async () => {
  const job = JSON.parse(await sweeperText());
  const none = { readings: [], trials: [], firstChecks: [], recordings: [] };
  job.machines.push({ ...job.machines[0], id: "sweeper15", ...none });
  const path = await fileOf("two-machines.json", JSON.stringify(job));
  const machines = async (...argv: string[]) =>
    (await call("check", "--json", path, ...argv)).out
      .trimEnd()
      .split("\n")
      .map((line) => JSON.parse(line).machine);
  expect(await machines()).toEqual(["sweeper14", "sweeper15"]);
  expect(await machines("--machine=sweeper15")).toEqual(["sweeper15"]);

  const out = join(folder, "each.csv");
  const written = await call("sheet", path, "--json", "--out", out);
  expect(written.status).toBe(0);
  const files = written.out
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line).out);
  expect(files).toEqual([join(folder, "each-sweeper14.csv"), join(folder, "each-sweeper15.csv")]);
  for (const file of files) expect(await readFile(file, "utf8")).toContain("LEVEL IN");
});

test("a job without machines is checked as it is drawn", async () => {
  const path = await fileOf(
    "no-machine.json",
    JSON.stringify({ ...JSON.parse(await sweeperText()), machines: [] }),
  );
  const { status, out } = await call("check", "--json", path);
  expect([status, JSON.parse(out).machine]).toEqual([1, null]);
  const refused = await call("sheet", path, "--out", join(folder, "none.pdf"));
  expect(refused).toMatchObject({ status: 2, out: "" });
});

test("text for people says the verdicts and, where it proposes a reading, the cautions", async () => {
  const { out } = await call("check", SWEEPER);
  expect(out).toMatch(/4 +A1:4 +OUT +.*ground.*CONTRADICTED/);
  expect(out).toContain("printed-role-contradicted");
  expect((await call("predict", SWEEPER)).out).toContain("Secure the machine");
});

test("convert refuses to leave a picture behind, to write another kind of file, or over another picture", async () => {
  const lonely = await fileOf("lonely.json", await sweeperText());
  const refused = await call("convert", lonely, "--out", join(folder, "lonely.pintruth"));
  expect(refused).toMatchObject({ status: 2, out: "" });
  expect(refused.err).toContain("images/sweeper-sheet-7.jpg");
  expect((await call("convert", SWEEPER, "--out", join(folder, "a.zip"))).status).toBe(2);

  const place = await mkdtemp(join(folder, "place-"));
  await mkdir(join(place, "images"));
  await writeFile(join(place, "images", "sweeper-sheet-7.jpg"), "mine");
  const over = await call("convert", SWEEPER, "--out", join(place, "job.json"));
  expect(over).toMatchObject({ status: 2, out: "" });
  expect(await readFile(join(place, "images", "sweeper-sheet-7.jpg"), "utf8")).toBe("mine");
});

test("a picture beside a job that is a link out of its folder is not read", async () => {
  const place = await mkdtemp(join(folder, "linked-"));
  await mkdir(join(place, "images"));
  await symlink(
    resolve("sample-data/sweeper/images/sweeper-sheet-7.jpg"),
    join(place, "images", "sweeper-sheet-7.jpg"),
  );
  await writeFile(join(place, "job.json"), await sweeperText());
  const { status, err } = await call(
    "convert",
    join(place, "job.json"),
    "--out",
    join(folder, "x.pintruth"),
  );
  expect(status).toBe(2);
  expect(err).toContain("link out of the job's own folder");
});

test("a missing file and a folder are told apart", async () => {
  expect((await call("check", join(folder, "nowhere.json"))).err).toContain("no such file");
  expect((await call("check", folder)).err).toContain("it is a folder");
});

test("each command has its own help", async () => {
  for (const argv of [
    ["sheet", "--help"],
    ["help", "sheet"],
    ["sheet", "-h"],
  ]) {
    const { status, out } = await call(...argv);
    expect([status, out]).toEqual([0, expect.stringContaining("--plug ID")]);
  }
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
  const original = await readFile(join("sample-data/sweeper", before.diagram.sheets[0].image.file));
  expect(original.equals(await readFile(join(folder, picture)))).toBe(true);
  after.diagram.sheets[0].image.file = before.diagram.sheets[0].image.file;
  expect(after).toEqual(before);
});

test("predict gives every reading a verdict and every used cavity something to measure", async () => {
  const { status, out } = await call("predict", "--json", SWEEPER);
  expect(status).toBe(0);
  const { readings, cavities, trials } = JSON.parse(out);
  const job = JSON.parse(await sweeperText());
  // a healthy machine's pump would run in the trial's state, its relay pull in, its lamps burn
  expect(trials).toMatchObject([{ id: "T1", machine: "sweeper14" }]);
  expect(trials[0].stateMoves).toEqual(expect.arrayContaining(["E1", "K2", "M1", "P1"]));
  expect(readings.map((one: { id: string }) => one.id)).toEqual(
    job.machines[0].readings.map((one: { id: string }) => one.id),
  );
  const measured = new Set(cavities.map((one: { cavity: string }) => one.cavity));
  for (const { cavity } of job.links) expect(measured).toContain(cavity);
  // each says what comes on because of the instrument, and because of the state
  const keyed = readings.find((one: { id: string }) => one.id === "R2");
  expect(keyed).toMatchObject({ moves: [], stateMoves: ["E1"], caution: null });
  for (const one of [...readings, ...cavities]) {
    expect(one.moves).toEqual(expect.any(Array));
    expect(one.stateMoves).toEqual(expect.any(Array));
    if (one.floating) expect(one).toMatchObject({ predicted: null, low: null, high: null });
    if (one.floating) expect(one.caution).toContain("ghost volts");
  }
});

test("predict names what a test lamp would pull in before it is held there", async () => {
  const job = JSON.parse(await sweeperText());
  job.machines[0].readings.push({
    id: "R99",
    quantity: "volts",
    red: "battery+",
    black: "X1:3",
    value: 24,
    when: { unplugged: ["A1"] },
    with: "test-lamp",
  });
  const file = await fileOf("lamp.json", JSON.stringify(job));
  const { readings } = JSON.parse((await call("predict", "--json", file)).out);
  expect(readings.at(-1)).toMatchObject({ id: "R99", stateMoves: [] });
  expect(readings.at(-1).moves).toContain("K2");
  expect((await call("predict", file)).out).toContain("what will move or come on");
});

test("help names every command", async () => {
  const { status, out } = await call("--help");
  expect(status).toBe(0);
  for (const name of ["check", "predict", "sheet", "convert"]) expect(out).toContain(name);
});
