import { expect, test } from "vitest";
import { createSession, moduleAtHand, moduleOn, plugOf } from "../../src/session/index.ts";
import { smallJob } from "./support/small-job.ts";

/** A second module, A2, in a second plug, X2. */
function twoModules() {
  const job = smallJob();
  const module = job.diagram.parts.find((part) => part.kind === "module");
  const [plug] = job.plugs;
  if (module?.kind !== "module" || !plug) throw new Error("the small job has a plug and a module");
  job.diagram.parts.push({ ...module, id: "A2" });
  job.plugs.push({ ...plug, id: "X2" });
  job.links.push({ pin: "A2:1", cavity: "X2:1" });
  return job;
}

test("the module at hand is the one selected, by itself, a pin or the cavity of a pin", () => {
  const session = createSession("one", twoModules());
  const selecting = (...selection: string[]) => {
    session.show({ selection });
    return moduleAtHand(session.get());
  };
  expect(selecting("A2")).toBe("A2");
  expect(selecting("A1:3")).toBe("A1");
  expect(selecting("X2:1")).toBe("A2");
  expect(selecting("P1", "A2:2")).toBe("A2");
});

test("where the selection names none, it is the one chosen before, then that of the plug at hand", () => {
  const session = createSession("one", twoModules());
  const at = () => moduleAtHand(session.get());
  expect(at()).toBe("A1");
  session.show({ plug: "X2" });
  expect(at()).toBe("A2");
  session.show({ module: "A1", selection: ["X2:2"] });
  expect(at()).toBe("A1");
  session.show({ module: "A9" });
  expect(at()).toBe("A2");
  session.open("two", { ...smallJob(), diagram: { sheets: [], parts: [], wires: [] } });
  expect(at()).toBeNull();
});

test("module and plug find one another by their first tie", () => {
  const job = twoModules();
  expect([plugOf(job, "A2"), moduleOn(job, "X2")]).toEqual(["X2", "A2"]);
  job.links = [];
  expect([plugOf(job, "A2"), moduleOn(job, "X2")]).toEqual([null, null]);
});
