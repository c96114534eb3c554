import { expect, type Locator, type Page } from "@playwright/test";
import { boxAtRest } from "./at-rest.ts";

/** A place on something, pixels from its top left. */
export type Spot = readonly [x: number, y: number];

/** A user's hand on a mouse: the only way in which a test that counts gestures may act. */
export class Hand {
  /** Clicks and drags so far. */
  gestures = 0;

  constructor(private readonly page: Page) {}

  /** One click, in the middle or on a spot. */
  async click(on: Locator, at?: Spot): Promise<void> {
    this.gestures++;
    await on.click(at ? { position: { x: at[0], y: at[1] } } : {});
  }

  /** One press, move and release. */
  async drag(on: Locator, from: Spot, to: Spot): Promise<void> {
    this.gestures++;
    const box = await boxAtRest(on);
    await this.page.mouse.move(box.x + from[0], box.y + from[1]);
    await this.page.mouse.down();
    await this.page.mouse.move(box.x + to[0], box.y + to[1], { steps: 5 });
    await this.page.mouse.up();
  }

  /** One entry of a list that opens: a click on it and one on the entry. */
  async pick(from: Locator, value: string): Promise<void> {
    this.gestures += 2;
    await from.selectOption(value);
  }

  /** A click that asks for a file, one on the file and one on Open. */
  async chooseFile(
    by: Locator,
    file: { name: string; mimeType: string; buffer: Buffer },
  ): Promise<void> {
    const asked = this.page.waitForEvent("filechooser");
    await this.click(by);
    await (await asked).setFiles(file);
    this.gestures += 2;
  }

  /** A click that saves a file; its path. */
  async save(by: Locator): Promise<string> {
    const saved = this.page.waitForEvent("download");
    await this.click(by);
    return (await saved).path();
  }

  /** Waits without doing anything, as long as long work may take. */
  async sees(what: Locator, text: string | RegExp): Promise<void> {
    await expect(what).toContainText(text, { timeout: 90_000 });
  }
}
