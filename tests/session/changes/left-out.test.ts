import { describe, expect, test } from "vitest";
import {
  addPart,
  drawnOf,
  layWire,
  removeThings,
  renamePart,
  whyNotId,
} from "../../../src/session/index.ts";
import { ids, recordingOn, reread } from "./two-machines.ts";

describe("what a machine is without", () => {
  /** The fuse is left out on m2, which is at hand, and nothing is recorded. */
  function bridged() {
    const session = recordingOn("m2", "Fuse bridged");
    session.edit("Delete", (draft) => removeThings(draft, ["F1"]));
    session.show({ recording: null });
    return session;
  }

  test("keeps its id and its wires' ids", () => {
    const session = bridged();
    let fuse = "";
    let wire: string | null = null;
    session.edit("Place fuse", (draft) => {
      fuse = addPart(draft, "fuse", "s1", [100, 50]);
      wire = layWire(draft, {
        sheet: "s1",
        from: { on: "pin", ref: "G1:+" },
        to: { on: "pin", ref: `${fuse}:1` },
        corners: [],
      });
    });
    expect([fuse, wire]).toEqual(["F2", "W5"]);
    expect(whyNotId(drawnOf(session.get()), fuse, "F1")).toMatch(/in use/);
    expect(reread(session)).toEqual(session.get().job);
  });

  test("follows when what its wires end on gets another name, and goes when that goes", () => {
    const session = bridged();
    session.edit("Rename", (draft) => renamePart(draft, "P1", "P7"));
    expect(session.get().job.diagram.wires[1]).toMatchObject({ id: "W2", to: "P7:1" });
    session.edit("Delete", (draft) => removeThings(draft, ["P7"]));
    expect(ids(session.get().job.diagram.wires)).toEqual(["W1", "W4"]);
    expect(reread(session)).toEqual(session.get().job);
  });
});
