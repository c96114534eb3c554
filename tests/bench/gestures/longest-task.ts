import type { Browser, Page } from "@playwright/test";

/** What the thread that draws and listens did meanwhile, milliseconds of the processor. */
export interface Tasks {
  /** The longest time in which it did not look up. */
  readonly longest: number;
  readonly together: number;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  /** Microseconds by the clock, and of the processor. */
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string; readonly data?: { readonly frames?: unknown } };
}

/** Which scheduler tasks there were, and whose threads they are of; nothing that costs much itself. */
const CATEGORIES = ["toplevel", "devtools.timeline"];
const TASK = "ThreadControllerImpl::RunTask";
const MAIN = "CrRendererMain";

/** Long enough for what a gesture leaves to a timer or another thread, which is part of its cost. */
const REST_MS = 1200;

/** The tasks of the page's own thread while `act` goes on, and until the page has come to rest. */
export async function tasksOf(
  browser: Browser,
  page: Page,
  act: () => Promise<void>,
): Promise<Tasks> {
  await browser.startTracing(page, { categories: CATEGORIES });
  await act();
  await page.waitForTimeout(REST_MS);
  const trace = JSON.parse((await browser.stopTracing()).toString());
  return tasksIn((trace as { traceEvents: TraceEvent[] }).traceEvents);
}

function tasksIn(events: readonly TraceEvent[]): Tasks {
  const mains = new Set(
    events
      .filter(({ name, args }) => name === "thread_name" && args?.name === MAIN)
      .map(({ pid, tid }) => `${pid} ${tid}`),
  );
  const taken = events
    .filter(({ name, pid, tid }) => name === TASK && mains.has(`${pid} ${tid}`))
    // Of the processor: what else the computer does at the time is not the page's fault.
    .map(({ dur = 0, tdur = dur }) => tdur / 1000);
  if (taken.length === 0) throw new Error("the browser's trace tells no tasks");
  return {
    longest: Math.max(...taken),
    together: taken.reduce((sum, ms) => sum + ms, 0),
  };
}
