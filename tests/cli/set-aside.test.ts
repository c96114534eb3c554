import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Finding } from "../../src/check/index.ts";
import { call } from "./call.ts";

const SWEEPER = "sample-data/sweeper/job.json";
let folder = "";

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "pintruth-aside-"));
});
afterAll(() => rm(folder, { recursive: true }));

const answer = async (file: string) => {
  const { status, out, err } = await call("check", "--json", file);
  return { status, err, ...(JSON.parse(out) as { findings: Finding[]; summary: object }) };
};

/** The sample with some of its findings set aside, as the editor would write them. */
async function withSetAside(
  name: string,
  which: (finding: Finding) => boolean,
  reason: string,
): Promise<string> {
  const job = JSON.parse(await readFile(SWEEPER, "utf8"));
  const { findings } = await answer(SWEEPER);
  job.setAside = findings.filter(which).map(({ rule, subjects, message, because }) => ({
    rule,
    subjects,
    message,
    because,
    reason,
  }));
  const path = join(folder, name);
  await writeFile(path, JSON.stringify(job));
  return path;
}

test("contradictions that are all set aside are still told, and the exit status is 0", async () => {
  const before = await answer(SWEEPER);
  expect(before.status).toBe(1);
  const file = await withSetAside(
    "all.json",
    ({ severity }) => severity === "contradiction",
    "known",
  );
  const { status, findings, summary } = await answer(file);
  expect(status).toBe(0);
  expect(summary).toEqual({ ...before.summary, contradictions: 0 });
  expect(findings).toEqual(
    before.findings.map((one) =>
      one.severity === "contradiction" ? { ...one, setAside: "known" } : one,
    ),
  );
});

test("one contradiction that counts is enough for 1", async () => {
  let left = 1;
  const file = await withSetAside(
    "some.json",
    ({ severity }) => severity === "contradiction" && left-- <= 0,
    "known",
  );
  expect((await answer(file)).status).toBe(1);
});

test("the text for people has them last, with a reason that reaches no terminal raw", async () => {
  const reason = "known \u001b[31mred\u0007\nnext";
  const file = await withSetAside(
    "text.json",
    ({ rule }) => rule.startsWith("printed-role-"),
    reason,
  );
  const { out } = await call("check", file);
  expect(out).toMatch(/\d+ set aside\n/);
  expect(out).toContain("Set aside: known \ufffd[31mred\ufffd next");
  expect(out.indexOf("set aside\n")).toBeGreaterThan(out.search(/\d+ warnings?\n/));
});

test("an entry of another kind than the format's is refused with its place", async () => {
  const job = JSON.parse(await readFile(SWEEPER, "utf8"));
  job.setAside = [{ rule: "r", subjects: ["A1"], message: "m" }];
  job.adopted = [{ pin: "A1:1", role: "king" }];
  const path = join(folder, "bad.json");
  await writeFile(path, JSON.stringify(job));
  const { status, err } = await call("check", path);
  expect(status).toBe(2);
  expect(err).toMatch(/setAside\[0\]\.reason|adopted\[0\]\.role/);
});
