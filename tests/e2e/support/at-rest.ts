import { expect, type Locator } from "@playwright/test";

export interface RestingBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Milliseconds between two looks: what is still on its way has moved in between. */
const BETWEEN = 150;

/**
 * Where a thing is on the screen once it stands still: what is pressed by its place must not be on its way there, as
 * a board fits its view to what is new on it and a line that comes late pushes what is under it.
 */
export async function boxAtRest(thing: Locator): Promise<RestingBox> {
  // The first look is at once, and compared with none.
  let box: RestingBox | null = null;
  await expect(async () => {
    const before = box;
    box = await thing.boundingBox();
    expect(box).not.toBeNull();
    expect(box).toEqual(before);
  }).toPass({ intervals: [BETWEEN] });
  if (!box) throw new Error("not on the screen");
  return box;
}

/** Its middle, once it stands still. */
export async function middleAtRest(thing: Locator): Promise<[x: number, y: number]> {
  const { x, y, width, height } = await boxAtRest(thing);
  return [x + width / 2, y + height / 2];
}
