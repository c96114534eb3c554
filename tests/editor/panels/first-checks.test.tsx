import { act } from "react";
import { expect, test } from "vitest";
import { TipProvider } from "../../../src/editor/app/controls/index.ts";
import { FirstChecks } from "../../../src/editor/panels/index.ts";
import { createSession } from "../../../src/session/index.ts";
import { send, show, type } from "../support/screen.tsx";
import { click, named, sweeper } from "../support/sweeper.ts";

async function checks() {
  const job = sweeper();
  for (const machine of job.machines) delete machine.firstChecks;
  const session = createSession("checks", job);
  const page = await show(
    session,
    <TipProvider>
      <FirstChecks />
    </TipProvider>,
  );
  const press = (name: string | RegExp) => send(named(page, name), click());
  const field = (label: string) => {
    const found = [...page.querySelectorAll("label")].find((one) => one.textContent === label);
    const input = found && page.querySelector<HTMLInputElement>(`[id="${found.htmlFor}"]`);
    if (!input) throw new Error(`no field ${label}`);
    return input;
  };
  const submit = () => act(async () => page.querySelector("form")?.requestSubmit());
  const kept = () => session.get().job.machines[0]?.firstChecks ?? [];
  return { session, page, press, field, submit, kept };
}

test("a check is typed like a reading, kept with its time, and undone in one step", async () => {
  const { session, page, press, field, submit, kept } = await checks();
  expect(page.textContent).toContain("none done yet");
  await press("Enter: Battery at rest");
  await type(field("Volts"), "24,48");
  await type(field("°C, if known"), "5 °C");
  expect(page.querySelector('output[aria-label="Taken for"]')?.textContent).toBe("24.48 V");
  await submit();
  expect(kept()).toEqual([
    {
      id: "C1",
      check: "battery-at-rest",
      value: 24.48,
      celsius: 5,
      at: expect.stringMatching(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]\d\d:\d\d$/),
    },
  ]);
  expect(page.textContent).toContain("About 50 % charged.");
  expect(page.textContent).toContain("nothing is corrected here");
  expect(page.textContent).toContain("1 of 5 good");
  expect(session.get().history.done).toHaveLength(1);
  await act(async () => session.undo());
  expect(kept()).toEqual([]);
  expect(page.textContent).toContain("none done yet");
});

test("what is lacking is said, and nothing is kept until it is there", async () => {
  const { page, press, field, submit, kept } = await checks();
  await press("Enter: Meter on a known source, before");
  await type(field("Volts"), "25.1");
  await submit();
  expect(page.querySelector('[role="alert"]')?.textContent).toContain("known source");
  expect(kept()).toEqual([]);
  await type(field("Known volts"), "25.2");
  await submit();
  expect(kept()).toMatchObject([{ check: "meter-before", value: 25.1, known: 25.2 }]);
});

test("a meter that fails its proof warns of the readings it took", async () => {
  const { session, page, press, field, submit } = await checks();
  expect(page.textContent).toContain("The meter has not been proved on a known source");
  await press("Enter: Meter on a known source, after");
  await type(field("Volts"), "22");
  await type(field("Known volts"), "25.2");
  await submit();
  expect(page.textContent).toContain("below the known 25.20 V: don’t trust it");
  expect(page.textContent).toContain("The meter failed its last proof");
  await press("Delete: Meter on a known source, after");
  expect(session.get().job.machines[0]?.firstChecks).toEqual([]);
});
