import { expect, test } from "vitest";
import { CheckingMark } from "../../../src/editor/app/checking-mark.tsx";
import { FindingsPanel } from "../../../src/editor/panels/index.ts";
import { applyEdit, EMPTY_HISTORY, type Job } from "../../../src/job/index.ts";
import {
  type AnalysisPort,
  createAnalysisServer,
  createSession,
  keepAnalysed,
} from "../../../src/session/index.ts";
import { pluggedBigJob } from "../../support/plugged-big-job.ts";
import { show } from "../support/screen.tsx";

/** A large job with readings, two of them odd, as it is after any edit. */
const measured = (): Job =>
  applyEdit({ job: pluggedBigJob(1200, 4, 2), history: EMPTY_HISTORY }, "Freeze", (draft) => {
    draft.title += "!";
  }).job;

const AGAIN = "From before the last edit: being checked again…";

test("readings that are being checked again are told, quietly and at each finding", async () => {
  const server = createAnalysisServer();
  /** Lets the step that is held up be taken; null while none is. */
  let release: (() => void) | null = null;
  let isHeld = false;
  const port: AnalysisPort = {
    begin: async (job) => server.begin(structuredClone(job)),
    check: async (changes, machine) => server.check(structuredClone(changes), machine),
    goOn: async (machine) => {
      if (isHeld)
        await new Promise<void>((resolve) => {
          release = resolve;
        });
      return server.goOn(machine);
    },
    answer: async () => {
      throw new Error("nobody asks here");
    },
    stop: () => {},
  };
  const session = createSession("one", measured());
  const desk = keepAnalysed(session, () => port);
  desk.isReady();
  await expect.poll(() => desk.isReady() && desk.get().again.length, { timeout: 60_000 }).toBe(0);
  const page = await show(
    session,
    <>
      <FindingsPanel />
      <CheckingMark />
    </>,
  );
  // from here on it changes by itself, as in the browser
  globalThis.IS_REACT_ACT_ENVIRONMENT = false;
  const marked = () =>
    [...page.querySelectorAll("li")].filter((one) => one.textContent?.includes(AGAIN)).length;
  const mark = () => page.querySelector("[role=status]")?.textContent;
  expect(marked()).toBe(0);
  expect(mark()).toBe("");
  isHeld = true;
  session.edit("Draw a wire", ({ diagram }) => {
    diagram.wires.push({ id: "N1", from: "A10:4", to: "E1:1" });
  });
  await expect.poll(mark, { timeout: 20_000 }).toBe("checking readings again…");
  expect(marked()).toBeGreaterThan(0);
  expect(page.querySelectorAll("li").length).toBeGreaterThan(marked());
  isHeld = false;
  await expect.poll(() => release !== null).toBe(true);
  (release as (() => void) | null)?.();
  await expect.poll(mark, { timeout: 60_000 }).toBe("");
  expect(marked()).toBe(0);
}, 120_000);
