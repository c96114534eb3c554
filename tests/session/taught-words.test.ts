import { expect, test } from "vitest";
import { checkJob } from "../../src/check/index.ts";
import { type Job, readJobText, writeJobText } from "../../src/job/index.ts";
import { createSession, forgetWord, pinsWithWord, teachWord } from "../../src/session/index.ts";
import { lampModule, matched } from "../support/check-example.ts";

const unknown = () => matched(lampModule({ "1": "WSP2", "3": " wsp2 " })).job;

const verdicts = (job: Job) => checkJob(job, "M1").roles.map(({ verdict }) => verdict);
const means = (job: Job) => checkJob(job, "M1").roles.map(({ printedRole }) => printedRole);

test("an unknown word is unproven and no finding speaks of it; taught, it counts at every pin", () => {
  const session = createSession("words", unknown());
  expect(means(session.get().job)).toEqual(["unrecognised", null, "unrecognised"]);
  expect(verdicts(session.get().job)).toEqual(["unproven", "unproven", "unproven"]);
  expect(checkJob(session.get().job, "M1").findings).toEqual([]);

  teachWord(session, " WSP2 ", "output");
  expect(session.get().job.words).toEqual([{ printed: "WSP2", role: "output" }]);
  expect(means(session.get().job)).toEqual(["output", null, "output"]);
  expect(verdicts(session.get().job)).toEqual(["contradicted", "unproven", "agrees"]);
  expect(readJobText(writeJobText(session.get().job))).toMatchObject({ ok: true });
});

test("taught, taught anew and forgotten: each one edit that undo takes back", () => {
  const session = createSession("words", unknown());
  const before = session.get().job;
  teachWord(session, "WSP2", "supply");
  teachWord(session, "wsp2", "output");
  expect(session.get().job.words).toEqual([{ printed: "WSP2", role: "output" }]);
  session.undo();
  expect(session.get().job.words).toEqual([{ printed: "WSP2", role: "supply" }]);
  forgetWord(session, "Wsp2");
  expect(session.get().job.words).toBeUndefined();
  expect(session.get().history.done.map(({ label }) => label)).toEqual([
    "Say that “WSP2” means permanent feed",
    "Forget what “Wsp2” means",
  ]);
  session.undo();
  session.undo();
  expect(session.get().job).toEqual(before);
});

test("a word that means something else on this diagram is taught over every table, and forgotten", () => {
  // RET is read as a return; on this diagram it is short for a retarder, whose coil pin 3 drives
  const { job } = matched(lampModule({ "3": "RET" }));
  const session = createSession("words", job);
  expect(means(session.get().job)[2]).toBe("ground");
  expect(verdicts(session.get().job)[2]).toBe("contradicted");
  teachWord(session, "Ret", "output");
  expect(means(session.get().job)[2]).toBe("output");
  expect(verdicts(session.get().job)[2]).toBe("agrees");
  expect(readJobText(writeJobText(session.get().job))).toMatchObject({
    ok: true,
    value: { words: [{ printed: "Ret", role: "output" }] },
  });
  session.undo();
  expect(verdicts(session.get().job)[2]).toBe("contradicted");
  session.redo();
  forgetWord(session, "RET");
  expect(means(session.get().job)[2]).toBe("ground");
});

test("a right word taught wrong is contradicted: what is taught counts, whatever the tables say", () => {
  const { job } = matched(lampModule({ "2": "GND", "3": "24V" }));
  const session = createSession("words", job);
  expect(verdicts(session.get().job).slice(1)).toEqual(["agrees", "contradicted"]);
  teachWord(session, "GND", "supply");
  teachWord(session, "24V", "output");
  expect(verdicts(session.get().job).slice(1)).toEqual(["contradicted", "agrees"]);
});

test.each([
  ["case", "wsp2"],
  ["blanks around it", "  WSP2 "],
  ["full-width letters", "ＷＳＰ２"],
])("a taught word is the same word whatever its %s", (_, printed) => {
  const { job } = matched(lampModule({ "3": printed }));
  expect(means({ ...job, words: [{ printed: "WSP2", role: "output" }] })[2]).toBe("output");
  expect(pinsWithWord(job, "WSP2")).toBe(1);
});

test("another word, or the word with more beside it, is not the one taught", () => {
  const { job } = matched(lampModule({ "1": "WSP", "3": "WSP2 X" }));
  const taught: Job = { ...job, words: [{ printed: "WSP2", role: "output" }] };
  expect(means(taught)).toEqual(["unrecognised", null, "unrecognised"]);
});

test("nothing is taught of no word", () => {
  const session = createSession("words", unknown());
  teachWord(session, "   ", "output");
  expect(session.get().job.words).toBeUndefined();
});

test("a number that repeats the pin's own is no word, and stays none when taught", () => {
  const { job } = matched(lampModule({ "3": "3" }));
  expect(means({ ...job, words: [{ printed: "3", role: "supply" }] })[2]).toBe("unrecognised");
});
