import { describe, expect, test } from "vitest";
import { distance, type Point } from "../../../src/base/index.ts";
import type { NetRun, Traced, TracedNet } from "../../../src/scan/index.ts";
import { dot, hole, LINE, line, SIZE, traced } from "../../support/pen-and-paper.ts";

/** Half a line's width: corners and nodes lie no farther from where they were drawn. */
const NEAR = LINE / 2;

const only = ({ nets }: Traced): TracedNet => {
  expect(nets).toHaveLength(1);
  return nets[0] as TracedNet;
};

/** Whether a run goes through these points, from either end, and turns nowhere else. */
function expectRun({ points }: NetRun, wanted: readonly Point[]) {
  const isTurned =
    distance(points[0] as Point, wanted[0] as Point) >
    distance(points[0] as Point, wanted.at(-1) as Point);
  const inOrder = isTurned ? [...points].reverse() : points;
  const text = JSON.stringify(points);
  expect(points.length, text).toBe(wanted.length);
  inOrder.forEach((point, n) => {
    expect(distance(point, wanted[n] as Point), text).toBeLessThanOrEqual(NEAR);
  });
}

const isLevel = ([a, b]: readonly Point[]) => a !== undefined && b !== undefined && a[1] === b[1];

const kinds = (net: TracedNet) => net.nodes.map(({ kind }) => kind).sort();

describe("the shape of a net", () => {
  test("a line with two square corners has both, and its ends; its level pieces are level", () => {
    const corners: Point[] = [
      [30, 40],
      [150, 40],
      [150, 180],
      [210, 180],
    ];
    const net = only(traced((pen) => line(pen, ...corners)));
    expectRun(net.runs[0] as NetRun, corners);
    const [a, b, c, d] = net.runs[0]?.points ?? [];
    expect(isLevel([a, b] as Point[]) && isLevel([c, d] as Point[])).toBe(true);
    expect(b?.[0]).toBe(c?.[0]);
    expect(kinds(net)).toEqual(["end", "end"]);
  });

  test("a rounded corner is one corner", () => {
    const net = only(
      traced((pen) => {
        pen.beginPath();
        pen.moveTo(30, 40);
        pen.arcTo(150, 40, 150, 180, 20);
        pen.lineTo(150, 180);
        pen.stroke();
      }),
    );
    expectRun(net.runs[0] as NetRun, [
      [30, 40],
      [150, 40],
      [150, 180],
    ]);
  });

  test("a slanted line stays slanted, and one that is hardly slanted too where it is long", () => {
    for (const wanted of [
      [
        [30, 40],
        [200, 140],
      ],
      [
        [20, 100],
        [220, 108],
      ],
    ] as const) {
      expectRun(only(traced((pen) => line(pen, ...wanted))).runs[0] as NetRun, wanted);
    }
  });

  test("a T without a dot and one with: one joint of three straight lines", () => {
    for (const widths of [0, 3, 5]) {
      const net = only(
        traced((pen) => {
          line(pen, [30, 100], [210, 100]);
          line(pen, [120, 100], [120, 200]);
          dot(pen, [120, 100], widths);
        }),
      );
      expect(kinds(net)).toEqual(["end", "end", "end", "joint"]);
      const joint = net.nodes.find(({ kind }) => kind === "joint")?.at as Point;
      expect(distance(joint, [120, 100]), `dot ${widths}`).toBeLessThanOrEqual(NEAR);
      expect(net.runs.map(({ points }) => points.length)).toEqual([2, 2, 2]);
      const level = net.runs.filter(({ points }) => isLevel(points));
      expect(level).toHaveLength(2);
    }
  });

  test.each([3, 4, 5.5])("a dot %d lines wide where four lines meet is one joint", (widths) => {
    const net = only(
      traced((pen) => {
        line(pen, [30, 100], [210, 100]);
        line(pen, [120, 30], [120, 200]);
        dot(pen, [120, 100], widths);
      }),
    );
    expect(kinds(net)).toEqual(["end", "end", "end", "end", "joint"]);
    expect(net.runs.map(({ points }) => points.length)).toEqual([2, 2, 2, 2]);
  });

  test("a dot with a hole in it is one joint all the same", () => {
    const net = only(
      traced((pen) => {
        line(pen, [30, 100], [210, 100]);
        line(pen, [120, 30], [120, 200]);
        dot(pen, [120, 100], 5);
        hole(pen, [123, 97], 3);
      }),
    );
    expect(kinds(net).filter((kind) => kind === "joint")).toHaveLength(1);
    expect(net.runs).toHaveLength(4);
  });

  test("a crossing is passed straight, without a node", () => {
    const { nets } = traced((pen) => {
      line(pen, [30, 100], [210, 100]);
      line(pen, [120, 30], [120, 200]);
    });
    expect(nets.map(kinds)).toEqual([
      ["end", "end"],
      ["end", "end"],
    ]);
    for (const { runs } of nets) expect(runs.map(({ points }) => points.length)).toEqual([2]);
  });

  test("a line that jumps others runs straight, be it over two of them", () => {
    const { nets } = traced((pen) => {
      for (const x of [90, 140]) line(pen, [x, 30], [x, 200]);
      line(pen, [20, 120], [78, 120]);
      line(pen, [102, 120], [128, 120]);
      line(pen, [152, 120], [220, 120]);
      for (const x of [90, 140]) {
        pen.beginPath();
        pen.arc(x, 120, 12, Math.PI, 0);
        pen.stroke();
      }
    });
    expect(nets).toHaveLength(3);
    const across = nets.find(({ box }) => box.right - box.left > 100) as TracedNet;
    expectRun(across.runs[0] as NetRun, [
      [20, 120],
      [220, 120],
    ]);
  });

  test("a hole in the print is passed straight", () => {
    const net = only(
      traced((pen) => {
        line(pen, [30, 100], [210, 100]);
        hole(pen, [120, 100], 8);
      }),
    );
    expectRun(net.runs[0] as NetRun, [
      [30, 100],
      [210, 100],
    ]);
  });

  test("a hole inside a line makes no second line round it", () => {
    const net = only(
      traced((pen) => {
        pen.lineWidth = 7;
        line(pen, [30, 100], [210, 100]);
        hole(pen, [120, 100], 2);
      }),
    );
    expect(net.runs).toHaveLength(1);
    expect(net.runs[0]?.points).toHaveLength(2);
  });

  test("a bump of ink on a line is no stub", () => {
    const net = only(
      traced((pen) => {
        line(pen, [30, 100], [210, 100]);
        pen.fillRect(100, 92, 5, 8);
      }),
    );
    expectRun(net.runs[0] as NetRun, [
      [30, 100],
      [210, 100],
    ]);
  });

  test("a closed ring comes back to its corner", () => {
    const net = only(
      traced((pen) => line(pen, [40, 40], [200, 40], [200, 160], [40, 160], [40, 40])),
    );
    expect(net.runs).toHaveLength(1);
    const { from, to, points } = net.runs[0] as NetRun;
    expect(from).toBe(to);
    expect(points).toHaveLength(5);
    for (const corner of [
      [40, 40],
      [200, 40],
      [200, 160],
      [40, 160],
    ] as const) {
      const far = Math.min(...points.map((point) => distance(point, corner)));
      expect(far, `${corner} of ${JSON.stringify(points)}`).toBeLessThanOrEqual(NEAR);
    }
  });

  test("a line up to a part ends at the part's edge", () => {
    const net = only(
      traced(
        (pen) => {
          pen.strokeRect(120, 80, 60, 40);
          line(pen, [30, 100], [120, 100]);
        },
        {},
        { parts: [{ left: 120, top: 80, right: 180, bottom: 120 }] },
      ),
    );
    expectRun(net.runs[0] as NetRun, [
      [30, 100],
      [120, 100],
    ]);
  });

  test("the same page gives the same ids, and other nets others", () => {
    const draw = () =>
      traced((pen) => {
        line(pen, [30, 60], [210, 60]);
        line(pen, [30, 140], [SIZE - 30, 140]);
      }).nets.map(({ id }) => id);
    expect(draw()).toEqual(draw());
    expect(new Set(draw()).size).toBe(2);
  });
});
