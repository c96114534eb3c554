import type { SKRSContext2D } from "@napi-rs/canvas";
import { describe, expect, test } from "vitest";
import type { Box, Point } from "../../../src/base/index.ts";
import type { Traced } from "../../../src/scan/index.ts";
import { line, traced } from "../../support/pen-and-paper.ts";

/** Names by net, sorted; nets without a name left out. */
const names = ({ nets }: Traced) =>
  nets
    .map(({ terminals }) => [...terminals].sort().join(" "))
    .filter((text) => text !== "")
    .sort();

const PART: Box = { left: 80, top: 60, right: 170, bottom: 120 };
/** Three lines out of the bottom of a part. */
const pins = (pen: SKRSContext2D) => {
  pen.strokeRect(80, 60, 90, 60);
  for (const x of [95, 125, 155]) line(pen, [x, 120], [x, 200]);
};

describe("terminals", () => {
  test("name the line whose end they are at, and that end has their names", () => {
    const found = traced((pen) => line(pen, [30, 100], [210, 100]), { A: [34, 96], B: [209, 104] });
    expect(names(found)).toEqual(["A B"]);
    expect(found.nets[0]?.nodes.map(({ terminals }) => terminals.join()).sort()).toEqual([
      "A",
      "B",
    ]);
  });

  test("an end before the middle of another line, even one that is nearer", () => {
    const found = traced(
      (pen) => {
        line(pen, [20, 100], [220, 100]);
        line(pen, [120, 118], [120, 210]);
      },
      { A: [120, 109] },
    );
    expect(found.nets.find(({ terminals }) => terminals.length > 0)?.box.bottom).toBeGreaterThan(
      200,
    );
  });

  test("on the way of a line they make a joint of it", () => {
    const found = traced((pen) => line(pen, [30, 100], [210, 100]), { A: [120, 103] });
    expect(names(found)).toEqual(["A"]);
    const node = found.nets[0]?.nodes.find(({ terminals }) => terminals.length > 0);
    expect(node?.kind).toBe("joint");
    expect(found.nets[0]?.runs).toHaveLength(2);
  });

  test("name nothing where no line is near", () => {
    expect(names(traced((pen) => line(pen, [30, 100], [210, 100]), { A: [120, 160] }))).toEqual([]);
  });

  test("at a part take the lines that leave it, though the symbol is smaller than the printed one", () => {
    const terminals: Record<string, Point> = { a: [108, 118], b: [125, 118], c: [142, 118] };
    const found = traced(pins, terminals, { parts: [PART] });
    expect(names(found)).toEqual(["a", "b", "c"]);
    const of = (name: string) => found.nets.find((net) => net.terminals.includes(name));
    expect(of("a")?.box.left).toBeLessThan(100);
    expect(of("c")?.box.right).toBeGreaterThan(150);
  });

  test("a pin without a line does not take its neighbour's, nor a line on another side", () => {
    const draw = (pen: SKRSContext2D) => {
      pen.strokeRect(80, 60, 90, 60);
      line(pen, [95, 120], [95, 200]);
    };
    const terminals: Record<string, Point> = { a: [95, 120], b: [112, 120], top: [95, 60] };
    expect(names(traced(draw, terminals, { parts: [PART] }))).toEqual(["a"]);
  });

  test("a line that only runs past a part is no pin's", () => {
    const draw = (pen: SKRSContext2D) => {
      pen.strokeRect(80, 60, 90, 60);
      line(pen, [20, 140], [220, 140]);
    };
    expect(names(traced(draw, { a: [125, 120] }, { parts: [PART] }))).toEqual([]);
  });
});
