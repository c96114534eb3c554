import "../../support/seed.ts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Box, boxesOverlap, seededRandom } from "../../../src/base/index.ts";
import { applyEdit, EMPTY_HISTORY, type Job } from "../../../src/job/index.ts";
import {
  crossingsOf,
  partsIn,
  runsThrough,
  type Scene,
  sceneOf,
  wiresIn,
} from "../../../src/session/index.ts";
import { bigJob } from "../../support/big-job.ts";

const SHEET = "sheet1";
const edited = (job: Job, change: (draft: Job) => void) =>
  applyEdit({ job, history: EMPTY_HISTORY }, "Edit", change).job;

const sorted = (map: ReadonlyMap<string, unknown>) => [...map].sort(([a], [b]) => (a < b ? -1 : 1));

/** Everything that a scene says, in an order that does not hang on how it was made. */
function told(scene: Scene, areas: readonly Box[]) {
  return {
    parts: scene.parts,
    wires: scene.wires,
    partById: sorted(scene.partById),
    wireById: sorted(scene.wireById),
    pins: sorted(scene.pins),
    degree: sorted(scene.degree),
    bounds: scene.bounds,
    crossings: sorted(crossingsOf(scene)),
    near: areas.map((area) => [
      partsIn(scene, area)
        .map(({ part }) => part.id)
        .sort(),
      wiresIn(scene, area)
        .map(({ wire }) => wire.id)
        .sort(),
    ]),
  };
}

describe("the scene after an edit", () => {
  it("is the one that would be built from nothing", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
        const random = seededRandom(seed);
        const pick = <T>(list: readonly T[]) => list[random.below(list.length)] as T;
        const changes: readonly ((draft: Job, n: number) => void)[] = [
          (draft, n) => {
            pick(draft.diagram.parts).label = `label ${n}`;
          },
          (draft) => {
            const part = pick(draft.diagram.parts);
            part.at = [part.at[0] + random.below(900) - 450, part.at[1] + random.below(90)];
          },
          (draft) => {
            pick(draft.diagram.parts).turn = pick([0, 90, 180, 270]);
          },
          (draft, n) => {
            pick(draft.diagram.wires).number = String(n);
          },
          (draft) => {
            pick(draft.diagram.wires).path = [[random.below(4000), random.below(3000)]];
          },
          (draft) => {
            pick(draft.diagram.wires).to = pick(draft.diagram.wires).from;
          },
          (draft) => {
            draft.diagram.wires.splice(random.below(draft.diagram.wires.length), 1);
          },
          (draft) => {
            const part = pick(draft.diagram.parts);
            if (part.kind === "module") part.pins.pop();
          },
          (draft, n) => {
            const wire = pick(draft.diagram.wires);
            draft.diagram.wires.push({ id: `N${n}`, from: wire.from, to: wire.to });
          },
          (draft) => {
            for (const part of draft.diagram.parts.slice(0, 60))
              part.at = [part.at[0] + 7, part.at[1]];
          },
        ];
        let job = edited(bigJob(240), (draft) => {
          draft.title = "another";
        });
        crossingsOf(sceneOf(job.diagram, SHEET));
        for (let n = 0; n < 25; n++) {
          job = edited(job, (draft) => pick(changes)(draft, n));
          const [left, top] = [random.below(4800), random.below(3400)];
          const area = {
            left,
            top,
            right: left + random.below(900),
            bottom: top + random.below(900),
          };
          const here = sceneOf(job.diagram, SHEET);
          // A copy shares no object with it, so that nothing known of the one helps the other.
          const anew = sceneOf(structuredClone(job).diagram, SHEET);
          expect(JSON.stringify(told(here, [area]))).toBe(JSON.stringify(told(anew, [area])));
          expect(partsIn(here, area).every(({ box }) => boxesOverlap(box, area))).toBe(true);
          crossingsOf(sceneOf(job.diagram, SHEET));
        }
      }),
      { numRuns: 3 },
    );
  });
});

describe("a wire that runs through a box", () => {
  it("has a point of its own in it, as looked for in small steps", () => {
    const place = fc.integer({ min: 0, max: 60 });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(place, place), { minLength: 2, maxLength: 4 }),
        fc.tuple(place, place, fc.integer({ min: 4, max: 30 }), fc.integer({ min: 4, max: 30 })),
        (points, [left, top, width, height]) => {
          const area = { left, top, right: left + width, bottom: top + height };
          const wire = { wire: { id: "W1", from: "A:1", to: "B:1" }, points, box: area };
          const isIn = (x: number, y: number, room: number) =>
            x >= left - room &&
            x <= left + width + room &&
            y >= top - room &&
            y <= top + height + room;
          const steps = points.slice(1).flatMap(([bx, by], index) => {
            const [ax, ay] = points[index] ?? [0, 0];
            return Array.from({ length: 201 }, (_, n) => [
              ax + ((bx - ax) * n) / 200,
              ay + ((by - ay) * n) / 200,
            ]);
          });
          const found = runsThrough(wire, area);
          // Steps are half a pixel apart at most: what only just touches may be missed by them.
          if (steps.some(([x = 0, y = 0]) => isIn(x, y, -1e-9))) expect(found).toBe(true);
          if (!steps.some(([x = 0, y = 0]) => isIn(x, y, 0.5))) expect(found).toBe(false);
        },
      ),
    );
  });
});
