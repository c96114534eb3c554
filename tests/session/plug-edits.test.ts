import { expect, test } from "vitest";
import { type Job, jobSchema, newJob } from "../../src/job/index.ts";
import {
  addCavity,
  createSession,
  deleteCavity,
  deletePlug,
  lossOfMarks,
  moveCavity,
  placeOf,
  redrawOnPhoto,
  redrawPlug,
  renameMark,
  setCavityState,
  setMachineWire,
} from "../../src/session/index.ts";

/** Two plugs, three cavities each; everything that can name a cavity names X1:2 once. */
function jobAtHand(): Job {
  const job = newJob("Sweeper", 24);
  const cavities = () => [
    { mark: "1", at: [0, 0] as [number, number] },
    { mark: "2", at: [5, 0] as [number, number] },
    { mark: "3", at: [10, 0] as [number, number] },
  ];
  job.plugs = [
    { id: "X1", side: "mating", cavities: cavities() },
    { id: "X11", side: "mating", cavities: cavities() },
  ];
  job.links = [
    { pin: "A1:2", cavity: "X1:2" },
    { pin: "A1:3", cavity: "X1:3" },
    { pin: "A2:2", cavity: "X11:2" },
  ];
  job.machines = [
    {
      id: "m1",
      name: "One",
      wires: [
        { cavity: "X1:2", colour: { base: "BN", tracer: "BK" } },
        { cavity: "X11:2", number: "7" },
      ],
      readings: [
        { id: "r1", quantity: "volts", red: "X1:2", black: "chassis", value: 24, when: {} },
        { id: "r2", quantity: "ohms", red: "X1:3", black: "X1:2", value: 3, when: {} },
      ],
      trials: [],
    },
    { id: "m2", name: "Two", wires: [{ cavity: "X1:2", number: "12" }], readings: [], trials: [] },
  ];
  job.standIns = [
    { id: "s1", kind: "relay", replaces: "A1", map: [{ cavity: "X1:2", terminal: "87" }] },
  ];
  return job;
}

const edited = (change: (draft: Job) => void) => {
  const session = createSession("k", jobAtHand());
  session.edit("Change", change);
  const { job } = session.get();
  jobSchema.parse(job);
  session.undo();
  expect(session.get().job).toEqual(jobAtHand());
  return job;
};

test("a new mark goes to everything that named the cavity, on every machine", () => {
  const job = edited((draft) => renameMark(draft, { plug: "X1", index: 1 }, "B"));
  expect(job.plugs[0]?.cavities.map((cavity) => cavity.mark)).toEqual(["1", "B", "3"]);
  expect(JSON.stringify(job)).not.toContain('"X1:2"');
  expect(job.links[0]?.cavity).toBe("X1:B");
  expect(job.machines.map((machine) => machine.wires[0]?.cavity)).toEqual(["X1:B", "X1:B"]);
  expect(job.machines[0]?.readings.map((reading) => [reading.red, reading.black])).toEqual([
    ["X1:B", "chassis"],
    ["X1:3", "X1:B"],
  ]);
  expect(job.standIns?.[0]?.map[0]?.cavity).toBe("X1:B");
});

test("a plug whose id begins alike is left alone", () => {
  const job = edited((draft) => renameMark(draft, { plug: "X1", index: 1 }, "B"));
  expect(job.links[2]).toEqual({ pin: "A2:2", cavity: "X11:2" });
  expect(job.machines[0]?.wires[1]?.cavity).toBe("X11:2");
});

test("of two cavities with one mark, the one not renamed keeps the link", () => {
  const job = edited((draft) => {
    addCavity(draft, "X1", "2", [15, 0]);
    renameMark(draft, { plug: "X1", index: 3 }, "4");
  });
  expect(job.links[0]?.cavity).toBe("X1:2");
});

test("a cavity goes with its link, its wires and its stand-in terminal; readings stay", () => {
  const job = edited((draft) => deleteCavity(draft, { plug: "X1", index: 1 }));
  expect(job.plugs[0]?.cavities.map((cavity) => cavity.mark)).toEqual(["1", "3"]);
  expect(job.links.map((link) => link.cavity)).toEqual(["X1:3", "X11:2"]);
  expect(job.machines.map((machine) => machine.wires.map((wire) => wire.cavity))).toEqual([
    ["X11:2"],
    [],
  ]);
  expect(job.standIns?.[0]?.map).toEqual([]);
  expect(job.machines[0]?.readings).toHaveLength(2);
});

test("a plug goes with all that hangs on it and nothing else", () => {
  const job = edited((draft) => deletePlug(draft, "X1"));
  expect(job.plugs.map((plug) => plug.id)).toEqual(["X11"]);
  expect(job.links).toEqual([{ pin: "A2:2", cavity: "X11:2" }]);
});

test("a plug drawn anew keeps what hangs on marks that stay", () => {
  const before = jobAtHand();
  expect(lossOfMarks(before, "X1", ["1", "2"])).toBe(1);
  expect(lossOfMarks(before, "X1", ["1"])).toBe(4);
  const job = edited((draft) => {
    setCavityState(draft, { plug: "X1", index: 0 }, "blocked");
    redrawPlug(draft, "X1", {
      side: "wire",
      cavities: [
        { mark: "1", at: [1, 1] },
        { mark: "2", at: [2, 2] },
      ],
      outline: { shape: "circle", at: [0, 0], radius: 9 },
    });
  });
  expect(job.plugs[0]?.cavities).toEqual([
    { mark: "1", at: [1, 1], blocked: true },
    { mark: "2", at: [2, 2] },
  ]);
  expect(job.plugs[0]?.side).toBe("wire");
  expect(job.links.map((link) => link.cavity)).toEqual(["X1:2", "X11:2"]);
});

test("empty and blocked exclude one another and leave no trace when taken back", () => {
  const place = { plug: "X1", index: 2 };
  const job = edited((draft) => {
    setCavityState(draft, place, "empty");
    setCavityState(draft, place, "blocked");
  });
  expect(job.plugs[0]?.cavities[2]).toEqual({ mark: "3", at: [10, 0], blocked: true });
  const plain = edited((draft) => {
    setCavityState(draft, place, "empty");
    setCavityState(draft, place, "plain");
    moveCavity(draft, place, [11, 1]);
  });
  expect(plain.plugs[0]?.cavities[2]).toEqual({ mark: "3", at: [11, 1] });
});

test("a wire's colour, number, size and note are kept per machine and cavity", () => {
  const job = edited((draft) => {
    setMachineWire(draft, "m2", "X1:2", { colour: { base: "RD" }, mm2: 1.5 });
    setMachineWire(draft, "m2", "X1:3", { note: "rubbed" });
  });
  expect(job.machines[1]?.wires).toEqual([
    { cavity: "X1:2", number: "12", colour: { base: "RD" }, mm2: 1.5 },
    { cavity: "X1:3", note: "rubbed" },
  ]);
  expect(job.machines[0]?.wires[0]?.colour).toEqual({ base: "BN", tracer: "BK" });
});

test("an entry with nothing left to say goes", () => {
  const job = edited((draft) => {
    setMachineWire(draft, "m2", "X1:2", { number: null });
    setMachineWire(draft, "m2", "X1:3", { number: null });
  });
  expect(job.machines[1]?.wires).toEqual([]);
});

test("a reference finds its cavity, and none that is not there", () => {
  const job = jobAtHand();
  expect(placeOf(job, "X11:3")).toEqual({ plug: "X11", index: 2 });
  expect(placeOf(job, "X1:9")).toBeNull();
});

test("a face drawn anew by fields drops the photo that no longer lies behind it", () => {
  const photo = {
    file: "a.png",
    width: 100,
    height: 100,
    at: [0, 0] as [number, number],
    mmPerPixel: 0.1,
  };
  const cavities = [{ mark: "1", at: [1, 1] as [number, number] }];
  const drawn = edited((draft) => {
    const [plug] = draft.plugs;
    if (plug) Object.assign(plug, { photo, neutral: true });
    redrawPlug(draft, "X1", { side: "mating", cavities });
  });
  expect(drawn.plugs[0]).not.toHaveProperty("photo");
  expect(drawn.plugs[0]).not.toHaveProperty("neutral");
});

test("drawn anew on its photo, a housing goes round the cavities as they lie now", () => {
  const job = edited((draft) => {
    const [plug] = draft.plugs;
    if (plug) plug.outline = { shape: "rectangle", at: [-5, -5], width: 20, height: 10 };
    redrawOnPhoto(draft, "X1", {
      side: "mating",
      cavities: [
        { mark: "1", at: [100, 100] },
        { mark: "2", at: [110, 100] },
      ],
    });
  });
  const outline = job.plugs[0]?.outline;
  expect(outline?.shape === "rectangle" && outline.at[0]).toBe(92);
});
