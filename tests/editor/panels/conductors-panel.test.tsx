import { expect, test } from "vitest";
import { TipProvider } from "../../../src/editor/app/controls/index.ts";
import { PartDetails } from "../../../src/editor/boards/diagram/index.ts";
import { ConductorsPanel } from "../../../src/editor/panels/index.ts";
import { createSession, type Session, setConductors } from "../../../src/session/index.ts";
import { smallJob } from "../../session/support/small-job.ts";
import { choose, commit, show } from "../support/screen.tsx";

function field<T extends HTMLElement>(page: HTMLElement, name: string): T {
  const label = [...page.querySelectorAll("label")].find((one) => one.textContent?.trim() === name);
  return document.getElementById(label?.htmlFor ?? "") as T;
}

const said = (session: Session) => session.get().job.conductors;

test("nothing is said until the user says it, and each answer is one edit that can be taken back", async () => {
  const session = createSession("k", smallJob());
  const page = await show(session, <ConductorsPanel />);
  expect(page.textContent).toContain("no table chosen");
  expect(said(session)).toBeUndefined();
  await choose(field(page, "Insulation"), "105");
  expect(said(session)).toEqual({ table: "33-cfr-183.425", insulation: 105 });
  await choose(field(page, "Beside the engine"), "yes");
  await commit(field(page, "Live wires in one bundle"), "4");
  await choose(field(page, "AWG beside mm²"), "european");
  expect(said(session)).toEqual({
    table: "33-cfr-183.425",
    insulation: 105,
    engineSpace: true,
    bundled: 4,
    gauges: "european",
  });
  expect(session.get().history.done).toHaveLength(4);
  await choose(field(page, "Insulation"), "");
  await choose(field(page, "Beside the engine"), "");
  await commit(field(page, "Live wires in one bundle"), "");
  await choose(field(page, "AWG beside mm²"), "");
  expect(said(session)).toBeUndefined();
});

test("a wire's size shows its gauge in the mapping that was chosen, and stores nothing", async () => {
  const session = createSession("k", smallJob());
  const [wire] = session.get().job.diagram.wires;
  session.edit("Size", (draft) => {
    const own = draft.diagram.wires.find(({ id }) => id === wire?.id);
    if (own) own.mm2 = 1.5;
    setConductors(draft, { gauges: "european" });
  });
  session.show({ selection: [wire?.id ?? ""] });
  const page = await show(
    session,
    <TipProvider>
      <PartDetails />
    </TipProvider>,
  );
  const gauge = field<HTMLInputElement>(page, "Gauge");
  expect([gauge.value, gauge.placeholder]).toEqual(["", "14, by the mapping"]);
  expect(session.get().job.diagram.wires.find(({ id }) => id === wire?.id)?.awg).toBeUndefined();
});
