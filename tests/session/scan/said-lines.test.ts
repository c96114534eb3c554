import { expect, test } from "vitest";
import {
  placePointedAt,
  type TraceAsk,
  type TraceDesk,
  type WholeNet,
} from "../../../src/session/index.ts";
import { settled, threeFuses, tracing } from "./fake-trace.ts";
import { pictureNet } from "./picture-net.ts";

const pinsOf = (desk: TraceDesk) => [...(desk.get().followed?.net?.terminals ?? [])].sort();

/** A line from F1 to F2 with a scratch from its middle down to where nothing is, unless that is no line. */
const scratched = (ask: TraceAsk) => {
  const pins = [
    [[92, 100], "F1:2"],
    [[228, 100], "F2:1"],
  ] as const;
  const isOut = ask.answers.some(({ at, stray }) => stray && at[0] === 160);
  const scratch = [[[160, 100]], [[160, 200]]] as const;
  return {
    nets: [
      isOut
        ? pictureNet("A", pins as never, [[0, 1]])
        : pictureNet("A", [...pins, ...scratch] as never, [
            [0, 2],
            [2, 1],
            [2, 3],
          ]),
    ],
  };
};

test("an end where nothing is placed can be left out as no line; undo brings it back", async () => {
  const { desk, session, asked } = tracing(threeFuses(), scratched);
  session.show({ scanDesk: true, tool: { name: "follow" } });
  await settled();
  await desk.follow([230, 100], 6, "F2:1");
  expect(desk.places()).toMatchObject([{ at: [160, 200], stretch: "ends" }]);
  desk.leaveOut([160, 200]);
  const kept = { at: [160, 200], joined: false, stray: true };
  expect(session.get().job.diagram.sheets[0]?.answers).toEqual([kept]);
  expect(desk.holds()).toBe(false);
  await settled();
  expect(asked.at(-1)?.answers).toEqual([kept]);
  expect(desk.get().followed?.net?.runs).toHaveLength(1);
  expect(desk.places()).toMatchObject([{ at: [160, 200], stretch: "left-out", joined: null }]);

  desk.takeBack([160, 200]);
  await settled();
  expect(desk.places()).toMatchObject([{ stretch: "ends" }]);
  session.undo();
  await settled();
  expect(desk.places()).toMatchObject([{ stretch: "left-out" }]);
  session.undo();
  await settled();
  expect(session.get().job.diagram.sheets[0]).not.toHaveProperty("answers");
  expect(desk.get().followed?.net?.runs).toHaveLength(3);
});

test("a stretch that was pointed at is left out, and the rest of its net stays lit", async () => {
  const { desk, session } = tracing(threeFuses(), scratched);
  session.show({ scanDesk: true, tool: { name: "follow" } });
  await settled();
  await desk.follow([161, 150], 6);
  const net = desk.get().followed?.net as WholeNet;
  const place = placePointedAt(net, [161, 150]);
  expect(place).toMatchObject({ at: [160, 150], stretch: "here" });
  desk.leaveOut(place?.at ?? [0, 0]);
  await settled();
  expect(desk.get().followed?.net?.runs).toHaveLength(1);
  expect(pinsOf(desk)).toEqual(["F1:2", "F2:1"]);
});

test("the open ends of the line that is chosen on the list are shown, and of no other", async () => {
  const { desk, session } = tracing(threeFuses(), scratched);
  session.show({ scanDesk: true });
  await desk.traceAll();
  expect(desk.places()).toEqual([]);
  desk.look("A");
  expect(desk.places()).toMatchObject([{ at: [160, 200], stretch: "ends" }]);
  desk.look(null);
  expect(desk.places()).toEqual([]);
});

test("all that was said is listed as it was said, each taken back by one undo step", async () => {
  const { desk, session } = tracing(threeFuses(), scratched);
  session.show({ scanDesk: true });
  await desk.traceAll();
  expect(desk.answers()).toEqual([]);
  expect(desk.answers()).toBe(desk.answers());
  desk.leaveOut([160, 200]);
  desk.answer([40, 40], true);
  const [stray, joined] = [
    { at: [160, 200], joined: false, stray: true },
    { at: [40, 40], joined: true },
  ];
  expect(desk.answers()).toEqual([stray, joined]);
  desk.takeBack([160, 200]);
  expect(desk.answers()).toEqual([joined]);
  session.undo();
  expect(desk.answers()).toEqual([stray, joined]);
});

test("a line that is left is proposed again once that is taken back", async () => {
  const { desk, session } = tracing(threeFuses(), scratched);
  session.show({ scanDesk: true });
  await desk.traceAll();
  desk.leave("A");
  expect([...desk.get().left]).toEqual(["A"]);
  desk.takeUp("A");
  expect([...desk.get().left]).toEqual([]);
});

/** A wire from F1 to F2 with the rim of a cup on it, which goes down and round and ends on the wire again. */
const ringed = () => {
  const rim = [[[130, 100]], [[200, 101]]] as const;
  return {
    nets: [
      pictureNet("A", [[[92, 100], "F1:2"], [[228, 100], "F2:1"], ...rim] as never, [
        [0, 2],
        [2, 1],
        [2, 3, [130, 160], [200, 160]],
      ]),
    ],
  };
};

test("a stretch that ends on another line is left out at a place of its own, not at that line's", async () => {
  const { desk, session } = tracing(threeFuses(), ringed);
  session.show({ scanDesk: true });
  await desk.traceAll();
  desk.look("A");
  const [end] = desk.places();
  expect(end).toMatchObject({ at: [200, 101], stretch: "ends" });
  desk.ask(end ?? null);
  desk.leaveOut(end?.at ?? [0, 0]);
  const [x, y] = session.get().job.diagram.sheets[0]?.answers?.[0]?.at ?? [0, 0];
  expect(x).toBe(200);
  // Four widths of a line away from the wire, and no farther from the end than that takes.
  expect(y - 100).toBeGreaterThanOrEqual(12);
  expect(y - 100).toBeLessThan(24);
});
