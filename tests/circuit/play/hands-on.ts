import { expect } from "vitest";
import {
  createPlay,
  type LiveState,
  type Play,
  type PlayEvent,
} from "../../../src/circuit/index.ts";
import type { Step } from "../../../src/job/index.ts";
import type { CircuitBuilder } from "../../support/circuit-builder.ts";

/** Steps in few words. */
export const turn = (name: string, position: string): Step => ({
  do: "turn",
  switch: name,
  position,
});
export const press = (name: string): Step => turn(name, "worked");
export const letGo = (name: string): Step => ({ do: "release", switch: name });
export const wait = (seconds: number): Step => ({ do: "wait", seconds });
export const unplug = (id: string): Step => ({ do: "unplug", id });
export const plug = (id: string): Step => ({ do: "plug", id });
export const remove = (id: string): Step => ({ do: "remove", id });
export const refit = (id: string): Step => ({ do: "fit", id });
export const engine = (is: "off" | "cranking" | "running"): Step => ({ do: "engine", engine: is });

export const playOf = (circuit: CircuitBuilder): Play => createPlay(circuit.job, null);

/** Does the steps; none of them may be refused. Returns the state after the last. */
export function run(play: Play, ...steps: readonly Step[]): LiveState {
  for (const step of steps) expect(play.step(step).refused).toBeNull();
  return play.state();
}

export const isOn = (
  state: LiveState,
  ...ids: readonly string[]
): readonly (boolean | undefined)[] => ids.map((id) => state.parts[id]?.on);

/** `"0.5 pulled-in K1"`, `"0 blew F1 by W5 GND2"`, `"0 oscillates K1"`, ... */
export const told = (events: readonly PlayEvent[]): readonly string[] =>
  events.map((event) => {
    const when = `${event.seconds} ${event.what}`;
    switch (event.what) {
      case "oscillates":
        return `${when} ${event.parts.join(" ")}`;
      case "blew":
        return `${when} ${event.part} by ${event.drawnBy.join(" ")}`;
      case "path-closed":
      case "path-opened":
        return `${when} ${event.part} ${event.between.join("-")}`;
      default:
        return `${when} ${event.part}`;
    }
  });
