import { expect, test } from "vitest";
import { appCommands } from "../../../src/editor/app/app-commands.ts";
import { createJobDesk } from "../../../src/editor/app/job-desk.ts";
import { JobDeskProvider } from "../../../src/editor/app/job-desk-context.tsx";
import { useIncomingFiles } from "../../../src/editor/app/use-incoming-files.ts";
import { JobStoreProvider } from "../../../src/editor/store-context.tsx";
import { createSession, keepSaved } from "../../../src/session/index.ts";
import { memoryJobStore } from "../../../src/store/index.ts";
import { send, show } from "../support/screen.tsx";
import { click, sweeper } from "../support/sweeper.ts";

function Drop({ file }: { file: File }) {
  const take = useIncomingFiles();
  return (
    <button type="button" onClick={() => take([file])}>
      drop
    </button>
  );
}

function desk() {
  const store = memoryJobStore();
  const session = createSession("one", sweeper());
  const saving = keepSaved(session, store, {
    now: () => "2024-05-01T08:00:00.000Z",
    wait: () => new Promise(() => {}),
  });
  return { store, session, desk: createJobDesk(session, store, saving) };
}

test("a file of no use is answered with what is accepted, and nothing changes", async () => {
  const { store, session, desk: jobs } = desk();
  // What a text document of an office program begins with: the signature of a zip archive.
  const bytes = new Uint8Array([0x50, 0x4b, 3, 4, ...new Array(200).fill(0)]);
  const page = await show(
    session,
    <JobStoreProvider store={store}>
      <JobDeskProvider desk={jobs}>
        <Drop file={new File([bytes], "pinout.docx")} />
      </JobDeskProvider>
    </JobStoreProvider>,
  );
  const before = session.get();
  await send(page.querySelector("button") as HTMLElement, click());
  await expect.poll(() => session.get().notice?.tone).toBe("error");
  const text = session.get().notice?.text ?? "";
  for (const word of ["pinout.docx", "PNG", "PDF", ".pintruth", ".json"]) {
    expect(text).toContain(word);
  }
  expect(session.get().job).toBe(before.job);
  expect(session.get().station).toBe(before.station);
});

test("a key begins a reading at the chosen cavity", () => {
  const { session, desk: jobs } = desk();
  const command = appCommands(jobs).find((one) => one.id === "enter-reading");
  expect(command?.keys).toEqual(["E"]);
  session.show({ selection: ["X1:4"] });
  command?.run(session);
  expect(session.get().draft).toMatchObject({ red: "X1:4", black: "chassis" });
});
