import { expect, test } from "vitest";
import { parseColour, TRAILER_PLUGS } from "../../src/standards/index.ts";
import { referenceRows } from "./rows.ts";

const rows = referenceRows("connectors.csv")?.filter((row) => !/VARIANT/.test(row.standard ?? ""));

test.skipIf(!rows)("marks and colours are those of the published pin tables, pin for pin", () => {
  for (const { standard, pins } of TRAILER_PLUGS) {
    const table = rows?.filter((row) => row.standard?.startsWith(standard)) ?? [];
    expect(
      pins.map((pin) => [pin.mark, pin.colour ?? ""]),
      standard,
    ).toEqual(table.map((row) => [row.pin, row["colour (IEC 60757)"]]));
  }
  expect(TRAILER_PLUGS.flatMap((plug) => plug.pins)).toHaveLength(rows?.length ?? 0);
});

/** Words that stand for one thing: a pin told as another of them would be a false claim. */
const THINGS = [
  /ground/i,
  /left/i,
  /right/i,
  /stop/i,
  /fog/i,
  /revers/i,
  /permanent/i,
  /ignition/i,
  /can h/i,
  /can l/i,
  /blackout/i,
] as const;

test.skipIf(!rows)("each pin is said to be what the published table says", () => {
  for (const { standard, pins } of TRAILER_PLUGS) {
    for (const pin of pins) {
      const row = rows?.find((one) => one.standard?.startsWith(standard) && one.pin === pin.mark);
      const published = (row?.function ?? "").replace("High", "H").replace("Low", "L");
      for (const thing of THINGS) {
        const expected = thing.test(published);
        expect(thing.test(pin.use), `${standard} ${pin.mark} ${thing}`).toBe(expected);
      }
    }
  }
});

test("every colour is one that the program reads", () => {
  for (const { colour } of TRAILER_PLUGS.flatMap((plug) => plug.pins)) {
    if (colour !== null) expect(parseColour(colour), colour).not.toBeNull();
  }
});
