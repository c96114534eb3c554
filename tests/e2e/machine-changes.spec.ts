import { expect, test } from "@playwright/test";
import { checkJob } from "../../src/check/index.ts";
import { boxAtRest } from "./support/at-rest.ts";
import { newDrawing } from "./support/diagram-desk.ts";

test("a lamp fitted to one machine is drawn, kept and checked for that machine alone", async ({
  page,
}) => {
  const desk = await newDrawing(page);
  await desk.place("ground", "X1", [400, 300]);
  await desk.place("fuse", "F1", [120, 300]);
  await desk.drawModule([80, 110], [240, 190]);
  await desk.addPin([240, 150], "LAMP");
  await page.keyboard.press("Escape");

  await page.getByRole("button", { name: /^Machine:/ }).click();
  await page.getByRole("menuitem", { name: "Add a machine" }).click();
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "Machine: Machine 2" }).click();
  await page.getByRole("menuitem", { name: "Retrofits, repairs and options" }).click();
  const record = page.getByRole("button", { name: "Record on the diagram" });
  await record.click();
  await expect(page.getByRole("alert")).toHaveText("Write first what was done to the machine.");
  await page.getByRole("textbox", { name: "What was done" }).fill("Work lamp fitted");
  await record.click();
  await expect(page.getByText("Only on Machine 2: Work lamp fitted")).toBeVisible();

  await desk.place("lamp", "P1", [330, 150]);
  const at = await desk.pins();
  await page.keyboard.press("w");
  // the added lamp is in the change: where it was laid tells where its pins are
  const lamp = { in: [300, 150] as const, out: [360, 150] as const };
  await desk.wire(at("A1:1"), lamp.in);
  await desk.wire(lamp.out, at("X1:1"));
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: /^Back to the diagram/ }).click();

  const job = await desk.savedJob();
  expect(job.diagram.parts.map(({ id }) => id)).toEqual(["X1", "F1", "A1"]);
  expect(job.diagram.wires).toEqual([]);
  const [first, second] = job.machines;
  expect(first?.changes).toBeUndefined();
  expect(second?.changes).toMatchObject([
    {
      note: "Work lamp fitted",
      parts: [{ id: "P1", kind: "lamp" }],
      wires: [
        { from: "A1:1", to: "P1:1" },
        { from: "P1:2", to: "X1:1" },
      ],
    },
  ]);
  const roleOn = (machine: string | undefined) =>
    checkJob(job, machine ?? "").roles.find(({ pin }) => pin === "A1:1")?.circuitRole;
  // no wire at all is drawn at the module there: that is not traced, and not unused
  expect(roleOn(first?.id)).toBe("undecided");
  expect(roleOn(second?.id)).toBe("output");

  // what it says of each machine follows the one at hand
  const row = page.getByRole("row", { name: /A1:1/ }).first();
  await expect(row).toContainText("output");
  await page.getByRole("button", { name: "Machine: Machine 2" }).click();
  await page.getByRole("menuitemradio", { name: "This machine" }).click();
  await expect(row).not.toContainText("output");
  await page.getByRole("button", { name: /^Machine:/ }).click();
  await page.getByRole("menuitemradio", { name: "Machine 2" }).click();

  // dragged with the mouse it stays the change's own lamp
  const box = await boxAtRest(desk.canvas);
  await page.mouse.move(box.x + 330, box.y + 150);
  await page.mouse.down();
  await page.mouse.move(box.x + 330, box.y + 180, { steps: 4 });
  await page.mouse.move(box.x + 330, box.y + 210, { steps: 4 });
  await page.mouse.up();
  const before = second?.changes?.[0]?.parts?.[0]?.at ?? [0, 0];
  const moved = await desk.savedJob();
  const after = moved.machines[1]?.changes?.[0]?.parts?.[0]?.at ?? [0, 0];
  expect(after[1] - before[1]).toBeGreaterThan(30);
  expect(moved.diagram).toEqual(job.diagram);

  // taken back as a whole, in one step
  await page.getByRole("button", { name: "Changes of Machine 2: 1. Show the list" }).click();
  const list = page.getByRole("dialog", { name: "Changes of Machine 2" });
  await list.getByRole("button", { name: "Take change 1 back" }).click();
  await expect(list.getByText(/^Nothing recorded yet/)).toBeVisible();
  await page.keyboard.press("Escape");
  expect((await desk.savedJob()).machines[1]?.changes).toBeUndefined();
  await page.keyboard.press("Control+z");
  expect((await desk.savedJob()).machines[1]?.changes).toHaveLength(1);
});
