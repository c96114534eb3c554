import { readFile } from "node:fs/promises";
import { expect, type Page } from "@playwright/test";
import { pinPosition } from "../../../src/circuit/index.ts";
import { type Job, readJobText, splitRef } from "../../../src/job/index.ts";
import { boxAtRest } from "./at-rest.ts";

type View = readonly [x: number, y: number];

/** Drives the diagram board with mouse and keyboard, as a user would who sees the pins. */
export class DiagramDesk {
  /** Where parts were laid, on the screen: the key to where every other point of the sheet is. */
  private readonly laid = new Map<string, View>();

  constructor(private readonly page: Page) {}

  get canvas() {
    return this.page.getByRole("application", { name: "Diagram board" });
  }

  /** Lays a part with its middle at a point of the board, pixels from its top left. */
  async place(kind: string, id: string, at: View): Promise<void> {
    await this.page.getByRole("button", { name: "Parts", exact: true }).click();
    await this.page.getByRole("searchbox", { name: "Find a part" }).fill(kind);
    await this.page.keyboard.press("Enter");
    await this.canvas.click({ position: { x: at[0], y: at[1] } });
    this.laid.set(id, at);
  }

  /** Draws a module's box from corner to corner. */
  async drawModule(from: View, to: View): Promise<void> {
    await this.page.getByRole("button", { name: "Parts", exact: true }).click();
    await this.page.getByRole("searchbox", { name: "Find a part" }).fill("module");
    await this.page.keyboard.press("Enter");
    const box = await boxAtRest(this.canvas);
    await this.page.mouse.move(box.x + from[0], box.y + from[1]);
    await this.page.mouse.down();
    await this.page.mouse.move(box.x + to[0], box.y + to[1], { steps: 5 });
    await this.page.mouse.up();
  }

  /** Adds a pin on a spot of the chosen module's edge and types the printed word. */
  async addPin(at: View, word: string): Promise<void> {
    await this.canvas.click({ button: "right", position: { x: at[0], y: at[1] } });
    await this.page.getByRole("menuitem", { name: /^Add a pin/ }).click();
    await this.page.getByRole("textbox", { name: "Printed word", exact: true }).fill(word);
    await this.page.keyboard.press("Enter");
  }

  /** The open job, saved to a file and read back as anybody's script would. */
  async savedJob(): Promise<Job> {
    await this.page.getByRole("button", { name: "Jobs" }).click();
    const [download] = await Promise.all([
      this.page.waitForEvent("download"),
      this.page.getByRole("button", { name: "Save as .json…" }).click(),
    ]);
    const path = await download.path();
    await this.page.keyboard.press("Escape");
    await expect(this.page.getByRole("dialog", { name: "Jobs" })).toHaveCount(0);
    const read = readJobText(await readFile(path, "utf8"));
    if (!read.ok) throw new Error(JSON.stringify(read.issues));
    return read.value;
  }

  /** Where pins are on the board, worked out from where two parts were laid. */
  async pins(): Promise<(ref: string) => View> {
    const job = await this.savedJob();
    const view = this.viewOf(job);
    return (ref) => {
      const { owner, name } = splitRef(ref);
      const part = job.diagram.parts.find((one) => one.id === owner);
      const at = part ? pinPosition(part, name) : null;
      if (!at) throw new Error(`no pin ${ref}`);
      return view(at);
    };
  }

  /** Where points of the sheet's picture are on the board, worked out like the pins. */
  async spots(): Promise<(onSheet: View) => View> {
    return this.viewOf(await this.savedJob());
  }

  private viewOf(job: Job): (onSheet: View) => View {
    const known = [...this.laid].flatMap(([id, view]) => {
      const part = job.diagram.parts.find((one) => one.id === id);
      return part ? [{ view, sheet: part.at }] : [];
    });
    const first = known[0];
    const far = known.toSorted(
      (a, b) =>
        Math.abs(b.sheet[0] - (first?.sheet[0] ?? 0)) -
        Math.abs(a.sheet[0] - (first?.sheet[0] ?? 0)),
    )[0];
    if (!first || !far || first === far) throw new Error("two parts must be laid");
    const zoom = (far.view[0] - first.view[0]) / (far.sheet[0] - first.sheet[0]);
    return (at) => [
      first.view[0] + (at[0] - first.sheet[0]) * zoom,
      first.view[1] + (at[1] - first.sheet[1]) * zoom,
    ];
  }

  /** Lays one wire by two clicks; the wire tool must be in hand. */
  async wire(from: View, to: View): Promise<void> {
    await this.canvas.click({ position: { x: from[0], y: from[1] } });
    await this.canvas.click({ position: { x: to[0], y: to[1] } });
  }

  /** Lays a wire to where it goes on untraced: the second click on one spot ends it there. */
  async wireGoingOn(from: View, to: View): Promise<void> {
    await this.wire(from, to);
    await this.canvas.click({ position: { x: to[0], y: to[1] } });
  }
}

/** Nothing of the browser's own file dialogs: files come and go as uploads and downloads. */
export async function withoutFilePickers(page: Page): Promise<void> {
  await page.addInitScript(() => {
    Reflect.deleteProperty(window, "showSaveFilePicker");
    Reflect.deleteProperty(window, "showOpenFilePicker");
  });
}

/** Opens a job with one sheet without a picture: a pixel of the board is a pixel of the sheet. */
export async function newDrawing(page: Page): Promise<DiagramDesk> {
  await withoutFilePickers(page);
  await page.goto("./");
  await page.getByRole("button", { name: "Jobs" }).click();
  await page.getByRole("button", { name: "New job" }).click();
  await page.getByRole("button", { name: "Draw without a picture" }).click();
  return new DiagramDesk(page);
}
