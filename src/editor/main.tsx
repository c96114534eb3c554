import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { newJob } from "../job/index.ts";
import {
  createSession,
  keepAnalysed,
  keepAnswering,
  keepFollowing,
  keepOneOpen,
  keepOperating,
  keepProposing,
  keepSaved,
  keepTracing,
  keepWordsRead,
  wordBoxesOf,
} from "../session/index.ts";
import { App } from "./app/app.tsx";
import { createJobDesk, NO_JOB } from "./app/job-desk.ts";
import { JobDeskProvider } from "./app/job-desk-context.tsx";
import { forgetRescued, rescue } from "./app/rescue.ts";
import { SessionProvider } from "./session-context.tsx";
import { JobStoreProvider } from "./store-context.tsx";
import { ThemeProvider } from "./theme/theme.tsx";
import { openAnalysis } from "./workers/open-analysis.ts";
import { openPlay } from "./workers/open-play.ts";
import { openReader } from "./workers/open-reader.ts";
import { openStore } from "./workers/open-store.ts";
import { openTrace } from "./workers/open-trace.ts";
import "./theme/fonts.css";
import "./theme/tokens.css";
import "./theme/base.css";

const root = document.getElementById("root");
if (!root) throw new Error("the page has no #root");

const session = createSession(NO_JOB, newJob("New job", 24));
const { store, readFile } = openStore();
const saving = keepSaved(session, store, {
  now: () => new Date().toISOString(),
  wait: (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
});
keepOperating(session, openPlay, {
  now: () => performance.now(),
  wait: (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
});
keepAnalysed(session, openAnalysis);
// A thread of its own: a long question keeps no check waiting, and can be broken off.
keepAnswering(session, openAnalysis);
const pages = keepTracing(session, openTrace, (file) => store.getPicture(file));
const parts = keepProposing(session, pages);
const words = keepWordsRead(session, pages, openReader);
const lines = keepFollowing(session, pages, {
  wait: (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
  words: wordBoxesOf(session, words),
});
keepOneOpen([
  { ...parts, isOpen: () => parts.get().isOpen, isBusy: () => false },
  { ...words, isOpen: () => words.get().isOpen, isBusy: () => words.get().reading !== null },
  {
    subscribe: lines.subscribe,
    isOpen: () => lines.get().isListOpen,
    isBusy: () => false,
    close: lines.closeList,
  },
]);
const desk = createJobDesk(session, store, saving, readFile);

// A tab can be killed without a word once it is hidden: this is the last sure moment to save.
const leave = () => {
  const { key, job } = session.get();
  if (saving.status.get().state !== "saved") {
    rescue(key, job, saving.builtUpon());
  }
  void saving.flush();
};
saving.status.subscribe(() => {
  if (saving.status.get().state === "saved") forgetRescued();
});
document.addEventListener("visibilitychange", () => {
  if (document.visibilityState === "hidden") leave();
});
addEventListener("pagehide", leave);
// Asks only where the store itself is in trouble: a save under way is not lost by leaving.
addEventListener("beforeunload", (event) => {
  if (saving.status.get().state === "failed") event.preventDefault();
});

void desk.start();

createRoot(root).render(
  <StrictMode>
    <ThemeProvider>
      <JobStoreProvider store={store}>
        <JobDeskProvider desk={desk}>
          <SessionProvider session={session}>
            <App />
          </SessionProvider>
        </JobDeskProvider>
      </JobStoreProvider>
    </ThemeProvider>
  </StrictMode>,
);
