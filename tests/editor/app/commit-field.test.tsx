import { expect, test } from "vitest";
import { CommitField } from "../../../src/editor/app/commit-field.tsx";
import { useSelected, useSession } from "../../../src/editor/session-context.tsx";
import { newJob } from "../../../src/job/index.ts";
import { createSession } from "../../../src/session/index.ts";
import { key, send, show, type } from "../support/screen.tsx";

function TitleField({ live }: { live: boolean }) {
  const session = useSession();
  const title = useSelected((state) => state.job.title);
  return (
    <CommitField
      live={live}
      value={title}
      onCommit={(text, merge) =>
        session.edit(
          "Rename",
          (draft) => {
            draft.title = text;
          },
          merge,
        )
      }
    />
  );
}

async function field(live: boolean) {
  const session = createSession("one", newJob("Pump", 24));
  const page = await show(session, <TitleField live={live} />);
  const input = page.querySelector("input");
  if (!input) throw new Error("no field");
  input.focus();
  const titles = () => ({
    title: session.get().job.title,
    steps: session.get().history.done.length,
  });
  const leave = () => send(input, new FocusEvent("focusout", { bubbles: true }));
  return { session, input, titles, leave };
}

test("a live field keeps every key at once, and a visit is one undo step", async () => {
  const { session, input, titles, leave } = await field(true);
  for (const text of ["L", "Li", "Lif", "Lift ", "Lift 2"]) {
    await type(input, text);
    expect(titles()).toEqual({ title: text.trim(), steps: 1 });
    expect(input.value).toBe(text);
  }
  await leave();
  await type(input, "Lift 3");
  await leave();
  expect(titles()).toEqual({ title: "Lift 3", steps: 2 });
  session.undo();
  expect(titles().title).toBe("Lift 2");
  session.undo();
  expect(titles().title).toBe("Pump");
});

test("Escape puts back what was there before the visit and leaves no step", async () => {
  const { input, titles } = await field(true);
  await type(input, "L");
  await type(input, "Lift");
  await send(input, key("Escape"));
  expect(titles()).toEqual({ title: "Pump", steps: 0 });
  expect(input.value).toBe("Pump");
});

test("an undo in the middle of typing shows in the field, and typing goes on from there", async () => {
  const { session, input, titles } = await field(true);
  await type(input, "Lift");
  await send(window, new Event("x"));
  await import("react").then(({ act }) => act(async () => session.undo()));
  expect(input.value).toBe("Pump");
  await type(input, "Pump 2");
  expect(titles()).toEqual({ title: "Pump 2", steps: 1 });
});

test("an emptied field that may not be empty keeps what it had last", async () => {
  const { input, titles, leave } = await field(true);
  await type(input, "");
  expect(titles().title).toBe("Pump");
  await leave();
  expect(input.value).toBe("Pump");
  expect(titles().steps).toBe(0);
});

test("a field that is not live waits for Enter", async () => {
  const { input, titles } = await field(false);
  await type(input, "Lift");
  expect(titles()).toEqual({ title: "Pump", steps: 0 });
  await send(input, key("Enter"));
  expect(titles()).toEqual({ title: "Lift", steps: 1 });
});
