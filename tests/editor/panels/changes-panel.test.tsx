import { act } from "react";
import { expect, test } from "vitest";
import { TipProvider } from "../../../src/editor/app/controls/index.ts";
import { ChangesPanel } from "../../../src/editor/panels/index.ts";
import {
  changesOf,
  createSession,
  newRecording,
  removeThings,
  type Session,
} from "../../../src/session/index.ts";
import { smallJob } from "../../session/support/small-job.ts";
import { key, press, send, show, type } from "../support/screen.tsx";

/** The lamp is taken out on the only machine; nothing is recorded any more. */
function changed(): Session {
  const session = createSession("k", smallJob());
  session.show({ recording: newRecording(session.get().job, "machine1", "Beacon removed") });
  session.edit("Delete", (draft) => removeThings(draft, ["P1"]));
  session.show({ recording: null });
  return session;
}

const panel = (session: Session) =>
  show(
    session,
    <TipProvider>
      <ChangesPanel />
    </TipProvider>,
  );

test("where nothing was changed there is only the way to record something", async () => {
  const session = createSession("k", smallJob());
  const page = await panel(session);
  expect(page.querySelectorAll("button")).toHaveLength(1);
  await press(page, "Record a change on this machine");
  expect(session.get().dialog).toBe("changes");
});

test("a change says what it did, and its note is rewritten as one edit", async () => {
  const session = changed();
  const page = await panel(session);
  expect(page.textContent).toContain("taken out P1");
  const note = page.querySelector("input") as HTMLInputElement;
  expect(note.value).toBe("Beacon removed");
  const steps = session.get().history.done.length;
  await act(async () => note.focus());
  await type(note, "Beacon taken off");
  await type(note, "Beacon taken off by the owner");
  await send(note, key("Enter"));
  expect(changesOf(session.get().job, "machine1")[0]?.note).toBe("Beacon taken off by the owner");
  expect(session.get().history.done).toHaveLength(steps + 1);
});

test("one thing is put back by itself, the whole change with one press", async () => {
  const session = changed();
  const page = await panel(session);
  await press(page, "Put P1 back");
  expect(changesOf(session.get().job, "machine1")).toEqual([{ note: "Beacon removed" }]);
  expect(page.textContent).toContain("nothing drawn yet");
  await press(page, "Take change 1 back");
  expect(session.get().job.machines[0]?.changes).toBeUndefined();
});

test("a change is shown by what its wires ended on, and gone on with", async () => {
  const session = changed();
  const page = await panel(session);
  await press(page, "Show change 1 on the diagram");
  expect(session.get()).toMatchObject({ selection: ["A1"], station: "diagram" });
  await press(page, "Go on with change 1");
  expect(session.get().recording).toEqual({
    machine: "machine1",
    change: 0,
    note: "Beacon removed",
  });
  expect(page.textContent).toContain("being recorded");
});
