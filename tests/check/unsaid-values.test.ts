import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { checkJob } from "../../src/check/index.ts";
import { type Job, readJobText } from "../../src/job/index.ts";

/** The demo's own job as it is kept, and the same without any watts and ohms, as a scan brings it in. */
const demo = (isStripped: boolean): Job => {
  const text = readFileSync("sample-data/sweeper/job.json", "utf8");
  const raw = JSON.parse(text);
  if (isStripped) {
    for (const part of raw.diagram.parts) {
      if (part.kind === "battery") continue;
      delete part.watts;
      delete part.ohms;
      delete part.coilOhms;
    }
  }
  const read = readJobText(JSON.stringify(raw));
  if (!read.ok) throw new Error("the demo does not open");
  return read.value;
};

const found = (job: Job) => checkJob(job, job.machines[0]?.id ?? "").findings;

test("without its watts and ohms the demo says nothing that it doesn't say with them", () => {
  const key = ({ rule, subjects }: { rule: string; subjects: readonly string[] }) =>
    `${rule} ${subjects.join(" ")}`;
  const known = new Set(found(demo(false)).map(key));
  const more = found(demo(true)).filter((one) => !known.has(key(one)));
  expect(more.filter(({ severity }) => severity !== "note").map(({ message }) => message)).toEqual(
    [],
  );
});

test("an open that the demo has is found without any value too", () => {
  const job = demo(true);
  const open = {
    ...job,
    machines: job.machines.map((machine) => ({
      ...machine,
      readings: machine.readings.map((one) =>
        one.id === "R5" ? { ...one, value: "OL" as const } : one,
      ),
    })),
  };
  const rules = found(open).filter(({ subjects }) => subjects.includes("R5"));
  expect(rules.map(({ rule }) => rule)).toContain("reading-unexpected");
});
