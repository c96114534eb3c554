import fc from "fast-check";
import { expect, test } from "vitest";
import "../../support/seed.ts";
import { newJob, readJobText, writeJobText } from "../../../src/job/index.ts";
import { NOT_SQUARED, planOf, type Squaring } from "../../../src/scan/index.ts";
import { createSession } from "../../../src/session/index.ts";
import { squareUpSheet, squaringProblem } from "../../../src/session/scan/index.ts";

const PHOTO = { file: "images/photo.jpg", width: 1600, height: 1200 };
const PAGE = [
  [210, 150],
  [1440, 90],
  [1520, 1080],
  [120, 1010],
] as const;
const placed = { sheet: "sheet1", turn: 0 };

test("a job with numbers that nobody meant opens again after its picture was squared up", () => {
  const number = fc.oneof(
    fc.constantFrom(0, 1e12, -1e12, 1e308, -1e308, 1e-300, 0.1),
    fc.double({ min: -500, max: 2000, noNaN: true }),
  );
  const size = fc.oneof(
    fc.constantFrom(1e-12, 1e12, 0.001, 10),
    fc.double({ min: 1, max: 50, noNaN: true }),
  );
  const point = fc.tuple(number, number);
  const corners = fc.oneof(
    fc.constant(PAGE),
    fc.constant(null),
    fc.tuple(point, point, point, point),
  );
  const sheet = fc.record({
    corners,
    bow: number,
    margin: fc.constantFrom(0, 10, 1e12),
    level: number,
    wide: fc.constantFrom(1600, 0.5, 1e12),
    answer: point,
  });
  const drawn = fc.record({
    at: point,
    unit: size,
    size: fc.tuple(size, size),
    pin: point,
    path: point,
  });
  fc.assert(
    fc.property(sheet, drawn, corners, (was, part, next) => {
      const original = { ...PHOTO, width: was.wide };
      const hostile: unknown = {
        ...newJob("Photo", 24),
        diagram: {
          sheets: [
            {
              id: "sheet1",
              image: PHOTO,
              original,
              ...(was.corners ? { corners: was.corners } : {}),
              squaring: { bow: was.bow, margin: was.margin, level: was.level },
              answers: [{ at: was.answer, joined: true }],
            },
          ],
          parts: [
            { ...placed, id: "G1", kind: "battery", at: part.at, unit: part.unit },
            {
              ...placed,
              id: "A1",
              kind: "module",
              at: part.at,
              size: part.size,
              pins: [{ id: "1", at: part.pin }, { id: "2" }],
            },
          ],
          wires: [{ id: "W1", from: "G1:+", to: "A1:1", path: [part.path] }],
        },
      };
      const read = readJobText(JSON.stringify(hostile));
      if (!read.ok) throw new Error(read.issues[0]?.message);
      const session = createSession("key", read.value);
      const squaring: Squaring = { ...NOT_SQUARED, corners: next };
      const plan = planOf(squaring, original);
      if (!plan || squaringProblem(session.get().job, "sheet1", squaring)) return;
      const made = { file: "images/squared.png", width: plan.width, height: plan.height };
      squareUpSheet(session, "sheet1", { squaring, cleaning: [], image: made });
      const again = readJobText(writeJobText(session.get().job));
      expect(again.ok ? [] : again.issues).toEqual([]);
    }),
    { numRuns: 400 },
  );
});
