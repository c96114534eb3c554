import { expect, test } from "vitest";
import { CommitField } from "../../../src/editor/app/commit-field.tsx";
import { useKeyboard } from "../../../src/editor/app/use-keyboard.ts";
import { newJob } from "../../../src/job/index.ts";
import { COMMANDS, createSession } from "../../../src/session/index.ts";
import { key, send, show, type } from "../support/screen.tsx";

function Screen({ onCommit = () => {} }: { onCommit?: (text: string) => void }) {
  useKeyboard(COMMANDS);
  return <CommitField aria-label="Title" value="Pump" onCommit={onCommit} />;
}

const edited = () => {
  const session = createSession("one", newJob("Pump", 24));
  session.edit("Rename", (draft) => {
    draft.title = "Changed";
  });
  return session;
};

const fieldIn = (page: HTMLElement) => {
  const field = page.querySelector("input");
  if (!field) throw new Error("the screen has no field");
  return field;
};

test("Ctrl+Z undoes, but in a field it is the field's own", async () => {
  const session = edited();
  const page = await show(session, <Screen />);
  const undo = () => key("z", { ctrlKey: true });
  expect(await send(fieldIn(page), undo())).toBe(true);
  expect(session.get().job.title).toBe("Changed");
  expect(await send(document.body, undo())).toBe(false);
  expect(session.get().job.title).toBe("Pump");
});

test("a slash finds, and in a field is a slash; Ctrl+F finds from anywhere", async () => {
  const session = edited();
  const page = await show(session, <Screen />);
  await send(fieldIn(page), key("/"));
  expect(session.get().dialog).toBeNull();
  await send(document.body, key("/"));
  expect(session.get().dialog).toBe("find");
  session.show({ dialog: null });
  await send(fieldIn(page), key("f", { ctrlKey: true }));
  expect(session.get().dialog).toBe("find");
});

test("a field commits once on Enter, and Escape puts the old text back", async () => {
  const committed: string[] = [];
  const session = edited();
  session.show({ selection: ["F1"] });
  const page = await show(session, <Screen onCommit={(text) => committed.push(text)} />);
  const field = fieldIn(page);
  field.focus();
  await type(field, "  Lamp ");
  await send(field, key("Enter"));
  expect(committed).toEqual(["Lamp"]);
  field.focus();
  await type(field, "Nonsense");
  await send(field, key("Escape"));
  expect(committed).toEqual(["Lamp"]);
  expect(field.value).toBe("Pump");
  expect(session.get().selection).toEqual(["F1"]);
});

test("leaving a field empty is no title", async () => {
  const committed: string[] = [];
  const page = await show(edited(), <Screen onCommit={(text) => committed.push(text)} />);
  const field = fieldIn(page);
  field.focus();
  await type(field, "   ");
  await send(field, key("Enter"));
  expect(committed).toEqual([]);
  expect(field.value).toBe("Pump");
});
