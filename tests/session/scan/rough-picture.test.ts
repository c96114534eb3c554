import { describe, expect, test } from "vitest";
import type { Point } from "../../../src/base/index.ts";
import type { LineQuestion } from "../../../src/scan/index.ts";
import { greyFrom } from "../../../src/scan/raster.ts";
import { isRough } from "../../../src/session/index.ts";
import { harmedPage } from "../../support/drawn-pages/traced.ts";
import { tracedPicture } from "../../support/drawn-pages/traced-picture.ts";
import { settled, threeFuses, tracing } from "./fake-trace.ts";

const asked = (at: Point): LineQuestion => ({ kind: "dot", at, isLikelier: "apart", nets: [] });

describe("a picture that leaves very much open", () => {
  test("is rough where its grain was taken for lines, though nothing is asked", () => {
    expect(isRough({ nets: [], questions: [], isTooRough: true })).toBe(true);
  });

  test("is not rough for the few questions of a page that is merely bad", async () => {
    const { out, terminals, parts } = await harmedPage(11, 1, [150], [24, 18]);
    const traced = tracedPicture(greyFrom(out.picture), { terminals, parts });
    expect(traced.questions.length).toBeGreaterThan(0);
    expect(isRough(traced)).toBe(false);
  });

  test("is not rough where they are few for so many pins, nor where they are few", () => {
    const nets = (pins: number) => [
      { terminals: Array.from({ length: pins }, (_, n) => `A1:${n}`) },
    ];
    const questions = (count: number) => Array.from({ length: count }, (_, n) => asked([n, n]));
    expect(isRough({ nets: nets(60), questions: questions(20), isTooRough: false })).toBe(false);
    expect(isRough({ nets: nets(60), questions: questions(21), isTooRough: false })).toBe(true);
    expect(isRough({ nets: nets(2), questions: questions(11), isTooRough: false })).toBe(false);
    expect(isRough({ nets: nets(2), questions: questions(12), isTooRough: false })).toBe(true);
  });

  test("is told of until that is put away, and of another picture anew", async () => {
    const { desk, session } = tracing(threeFuses(), () => ({ nets: [] }));
    await desk.traceAll();
    expect(desk.get().isRoughHeard).toBe(false);
    desk.hearRough();
    session.edit("Move a part", (draft) => {
      for (const part of draft.diagram.parts) part.at = [part.at[0], part.at[1] + 20];
    });
    await desk.traceAll();
    expect(desk.get().isRoughHeard).toBe(true);
    session.editWhole("Clean the picture", (draft) => {
      for (const sheet of draft.diagram.sheets)
        if (sheet.image) sheet.image = { ...sheet.image, file: "images/cleaned.png" };
    });
    await settled();
    expect(desk.get().isRoughHeard).toBe(false);
  });
});
