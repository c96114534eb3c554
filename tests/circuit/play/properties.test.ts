import fc from "fast-check";
import { expect, test } from "vitest";
import { type Random, seededRandom } from "../../../src/base/index.ts";
import { createPlay, type LiveState, type Play, pinsOf } from "../../../src/circuit/index.ts";
import type { Job, Part, Step } from "../../../src/job/index.ts";
import { randomMachine, randomStep, type Wanted } from "./random-machine.ts";
import "../../support/seed.ts";

const seeds = fc.integer({ min: 0, max: 2 ** 31 });
const STEPS = 10;

interface Played {
  readonly job: Job;
  readonly play: Play;
  readonly random: Random;
}

/** Plays some steps on a random machine and looks at the state after each of them. */
function playThrough(
  wanted: Wanted,
  numRuns: number,
  look: (state: LiveState, played: Played, step: Step | null) => void,
) {
  fc.assert(
    fc.property(seeds, (seed) => {
      const random = seededRandom(seed);
      const job = randomMachine(random, wanted);
      const played = { job, play: createPlay(job, null), random };
      look(played.play.state(), played, null);
      for (let n = 0; n < STEPS; n++) {
        const step = randomStep(random, job);
        look(played.play.step(step), played, step);
      }
    }),
    { numRuns },
  );
}

const all = { memory: true, unsaid: true };
const isOut = (state: LiveState, part: Part) =>
  state.parts[part.id]?.unplugged === true || state.parts[part.id]?.removed === true;

test("the same steps lead to the same states, whatever was asked in between", () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const random = seededRandom(seed);
      const job = randomMachine(random, all);
      const play = createPlay(job, null);
      const steps = Array.from({ length: STEPS }, () => randomStep(random, job));
      const states = steps.map((step) => play.step(step));
      const again = createPlay(structuredClone(job), null);
      steps.forEach((step, n) => {
        again.volts("battery+", "chassis");
        again.step({ do: "turn", switch: "nowhere", position: "on" });
        expect(again.step(step)).toEqual(states[n]);
      });
      // what is kept of a recording is enough: refused steps change nothing
      const kept = createPlay(job, null);
      const last = states.at(-1) as LiveState;
      for (const step of last.steps) kept.step(step);
      expect({ ...kept.state(), refused: last.refused }).toEqual(last);
    }),
    { numRuns: 25 },
  );
});

test("a state is plain data", () => {
  playThrough(all, 20, (state) => {
    expect(structuredClone(state)).toEqual(state);
    expect(JSON.parse(JSON.stringify(state))).toEqual(state);
  });
});

test("what wires bring to a part, they take from it again", () => {
  let flowing = 0;
  playThrough(all, 50, (state, { job }) => {
    const most = Math.max(...Object.values(state.wires).map(({ amps }) => Math.abs(amps)));
    const near = 1e-6 * (1 + most);
    const into = new Map<string, number>();
    for (const { id, from, to } of job.diagram.wires) {
      const amps = state.wires[id]?.amps ?? Number.NaN;
      if (Math.abs(amps) > 1e-3) flowing++;
      into.set(from, (into.get(from) ?? 0) - amps);
      into.set(to, (into.get(to) ?? 0) + amps);
    }
    for (const part of job.diagram.parts) {
      if (part.kind === "ground" || part.kind === "offpage") continue;
      const brought = pinsOf(part).map(({ id }) => into.get(`${part.id}:${id}`) ?? 0);
      expect(Math.abs(brought.reduce((sum, one) => sum + one, 0))).toBeLessThanOrEqual(near);
      // nothing goes through what is out, and only straight through where wires meet
      if (isOut(state, part) || part.kind === "splice" || part.kind === "inline") {
        for (const one of brought) expect(Math.abs(one)).toBeLessThanOrEqual(near);
      } else if (brought.length === 2 && part.kind !== "switch") {
        expect(
          Math.abs(Math.abs(brought[0] ?? 0) - (state.parts[part.id]?.amps ?? 0)),
        ).toBeLessThan(
          // a suppression diode's current is told apart from its coil's
          part.kind === "solenoid" ? Number.POSITIVE_INFINITY : near,
        );
      }
    }
  });
  expect(flowing).toBeGreaterThan(500);
});

test("no fuse or breaker that has not opened carries more than it can", () => {
  let blown = 0;
  playThrough(all, 50, (state, { job }) => {
    for (const part of job.diagram.parts) {
      if (part.kind !== "fuse" && part.kind !== "breaker") continue;
      const { amps = 0, blown: isBlown } = state.parts[part.id] ?? {};
      if (isBlown) {
        blown++;
        expect(amps).toBe(0);
      } else if (state.oscillating.length === 0)
        expect(amps).toBeLessThanOrEqual(1.3501 * (part.amps ?? 10));
    }
    for (const event of state.events) {
      if (event.what === "blew") expect(event.drawnBy).not.toEqual([]);
    }
  });
  expect(blown).toBeGreaterThan(10);
});

test("at rest every relay and module agrees with the volts that it sees", () => {
  let on = 0;
  let off = 0;
  playThrough(all, 50, (state, { job, play }) => {
    if (state.oscillating.length > 0) return;
    const across = (red: string, black: string) => play.volts(red, black) ?? 0;
    for (const part of job.diagram.parts) {
      if (isOut(state, part)) continue;
      const isOn = state.parts[part.id]?.on ?? false;
      if (part.kind === "relay") {
        const volts = across(`${part.id}:86`, `${part.id}:85`);
        // 24 V: pulls in at 18 V, drops out below 4.8 V
        if (part.latching) {
          if (volts >= 18) expect(isOn).toBe(true);
          if (volts <= -18) expect(isOn).toBe(false);
        } else if (Math.abs(volts) >= 18) expect(isOn).toBe(true);
        else if (Math.abs(volts) < 4.8) expect(isOn).toBe(false);
      } else if (part.kind === "module" && part.power) {
        expect(isOn).toBe(across(`${part.id}:1`, `${part.id}:2`) >= 14.4);
        const [path] = part.behaviour?.paths ?? [];
        if (!isOn || !path?.input) continue;
        const input = across(`${part.id}:${path.input}`, `${part.id}:2`);
        const isActive = path.active === "high" ? input >= 12 : input <= 7.2;
        if (play.volts(`${part.id}:${path.input}`, `${part.id}:2`) === null) continue;
        if (path.does !== (isActive ? "follow" : "invert")) continue;
        const [a, b] = path.between;
        expect(Math.abs(across(`${part.id}:${a}`, `${part.id}:${b}`))).toBeLessThan(0.01);
      } else continue;
      if (isOn) on++;
      else off++;
    }
  });
  expect(Math.min(on, off)).toBeGreaterThan(20);
});

test("volts are told just where something ties a point to chassis, and nothing unsaid moves it", () => {
  let told = 0;
  playThrough(all, 30, (state, { play }) => {
    for (const [pin, { state: lies, volts }] of Object.entries(state.pins)) {
      if (lies === "floating" || lies === "unknown") expect(volts).toBeNull();
      if (volts === null) expect(["floating", "unknown", "live", "ground"]).toContain(lies);
      const red = play.volts(pin, "chassis");
      // an open joint has no single answer; a battery lifted from chassis counts from its minus
      if (volts === null || red === null) continue;
      told++;
      expect(red).toBeCloseTo(volts, 6);
    }
  });
  expect(told).toBeGreaterThan(1500);
});
