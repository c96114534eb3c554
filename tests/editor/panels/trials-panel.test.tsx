import { expect, test } from "vitest";
import { TipProvider } from "../../../src/editor/app/controls/index.ts";
import { TrialsPanel } from "../../../src/editor/panels/index.ts";
import { createSession, newTrial, type Session } from "../../../src/session/index.ts";
import { smallJob } from "../../session/support/small-job.ts";
import { bigJob } from "../../support/big-job.ts";
import { press, show } from "../support/screen.tsx";

const panel = (session: Session) =>
  show(
    session,
    <TipProvider>
      <TrialsPanel />
    </TipProvider>,
  );

test("a trial begun on one machine is none of another: it is gone on with there, or discarded", async () => {
  const job = smallJob();
  const session = createSession("k", job);
  session.edit("Add", (draft) => {
    draft.machines.push({ id: "other", name: "Other", wires: [], readings: [], trials: [] });
  });
  const home = session.get().machine;
  session.show({ trial: { ...newTrial(home), note: "hums" }, machine: "other" });
  const page = await panel(session);
  expect(page.textContent).toContain("A trial was begun on");
  expect(page.querySelector("form")).toBeNull();
  await press(page, "Go on with it there");
  expect(session.get().machine).toBe(home);
  expect(page.querySelector("form")?.textContent).toContain("The machine’s state");
});

test("of hundreds of modules only those unplugged are laid out, and one is found by its name", async () => {
  const session = createSession("k", bigJob(800));
  session.show({ trial: { ...newTrial("machine1"), when: { unplugged: ["A14"] } } });
  const page = await panel(session);
  const unplugged = [...page.querySelectorAll("fieldset")].find((one) =>
    one.textContent?.startsWith("Unplugged"),
  );
  const pressed = [...(unplugged?.querySelectorAll("button") ?? [])];
  expect(pressed.map((one) => [one.textContent, one.getAttribute("aria-pressed")])).toEqual([
    ["A14", "true"],
  ]);
});
