import { describe, expect, test } from "vitest";
import { type Correction, checkJob, type Finding } from "../../../src/check/index.ts";
import { type Job, readJobText, writeJobText } from "../../../src/job/index.ts";
import {
  correct,
  correctionLabel,
  correctionsAbout,
  createSession,
  type Session,
} from "../../../src/session/index.ts";
import { lampModule, matched, onMachine, reading } from "../../support/check-example.ts";

const findings = (session: Session): readonly Finding[] =>
  checkJob(session.get().job, session.get().machine).findings;

const offered = (session: Session, rule: string, does: Correction["does"]): Correction => {
  const found = findings(session)
    .filter((one) => one.rule === rule)
    .flatMap(({ corrections = [] }) => corrections)
    .find((one) => one.does === does);
  if (!found) throw new Error(`${rule} does not offer ${does}`);
  return found;
};

/** Makes the correction, and holds that it is one edit, readable from a file, taken back by one undo. */
function corrected(job: Job, correction: (session: Session) => Correction) {
  const session = createSession("corrections", job);
  const before = session.get().job;
  const one = correction(session);
  correct(session, one);
  const { job: after, history, machine } = session.get();
  expect(history.done.map(({ label }) => label)).toEqual([
    correctionLabel(one, { job: before, machine }),
  ]);
  expect(readJobText(writeJobText(after))).toMatchObject({ ok: true });
  const left = findings(session);
  session.undo();
  expect(session.get().job).toEqual(before);
  return { after, left, label: history.done[0]?.label ?? "" };
}

/** The same for a correction that a rule offers: its findings must be gone after it. */
function putRight(job: Job, rule: string, does: Correction["does"]) {
  const about = (found: readonly Finding[], subjects: string) =>
    found.filter((one) => one.rule === rule && one.subjects.join() === subjects);
  let subjects = "";
  const result = corrected(job, (session) => {
    const one = offered(session, rule, does);
    const finding = findings(session).find(({ corrections = [] }) =>
      corrections.some((other) => JSON.stringify(other) === JSON.stringify(one)),
    );
    subjects = finding?.subjects.join() ?? "";
    return one;
  });
  expect(about(result.left, subjects)).toEqual([]);
  return result;
}

describe("roles", () => {
  test("the circuit's role is adopted, and the word stays on the diagram as it is printed", () => {
    const job = lampModule({ "1": "GND" }).job;
    const { after, label } = putRight(job, "printed-role-contradicted", "adopt-role");
    expect(label).toBe("Adopt permanent feed on the sheet (A1:1)");
    expect(after.adopted).toEqual([{ pin: "A1:1", role: "supply" }]);
    expect(after.diagram).toEqual(job.diagram);
  });

  test("on a machine with changes of its own it counts for that machine alone", () => {
    const job = onMachine(lampModule({ "1": "GND" }), {
      changes: [{ note: "Fuse by-passed", without: ["P1"] }],
    });
    const { after } = putRight(job, "printed-role-contradicted", "adopt-role");
    expect(after.adopted).toEqual([{ pin: "A1:1", role: "supply", machine: "machine1" }]);
  });

  test("a role that the circuit no longer allows is dropped, or made the circuit's own", () => {
    const job = { ...lampModule().job, adopted: [{ pin: "A1:1", role: "ground" as const }] };
    expect(putRight(job, "adopted-role-contradicted", "drop-role").after.adopted).toBeUndefined();
    expect(putRight(job, "adopted-role-contradicted", "adopt-role").after.adopted).toEqual([
      { pin: "A1:1", role: "supply" },
    ]);
  });

  test("what a reading forbids is put right by the circuit's role", () => {
    const job = onMachine(matched(lampModule({ "1": "GND" })), {
      readings: [reading("R1", 25, { with: "test-lamp" })],
    });
    putRight(job, "reading-contradicts-printed", "adopt-role");
  });

  test("where several roles fit, only a reading that leaves one makes it one to adopt", () => {
    const plain = matched(
      lampModule()
        .part("ground", "GND3")
        .contact("S1", "operator")
        .wire("A1:2 S1:1", "S1:2 GND3:1"),
    );
    for (const { corrections } of checkJob(plain.job, "machine1").findings)
      expect(corrections ?? []).toEqual([]);
  });

  test("words on the wrong pins are moved to where they fit", () => {
    const job = lampModule({ "1": "GND", "2": "B+", "3": "OUT" }).job;
    const { after, left } = putRight(job, "printed-roles-rearranged", "move-words");
    const module = after.diagram.parts.find(({ id }) => id === "A1");
    expect(module?.kind === "module" && module.pins.map(({ printed }) => printed)).toEqual([
      "B+",
      "GND",
      "OUT",
    ]);
    expect(left).toEqual([]);
  });

  test("words that changed meanwhile are left alone", () => {
    const session = createSession("moved", lampModule({ "1": "GND", "2": "B+" }).job);
    const one = offered(session, "printed-roles-rearranged", "move-words");
    session.edit("Type", (draft) => {
      const module = draft.diagram.parts.find(({ id }) => id === "A1");
      if (module?.kind === "module" && module.pins[0]) module.pins[0].printed = "OUT";
    });
    const { job } = session.get();
    correct(session, one);
    expect(session.get().job).toBe(job);
  });
});

describe("wires", () => {
  const seen = (more: object) =>
    onMachine(matched(lampModule()), { wires: [{ cavity: "X1:3", ...more }] });
  const drawn = (job: Job, more: object): Job => ({
    ...job,
    diagram: {
      ...job.diagram,
      wires: job.diagram.wires.map((wire) => (wire.id === "W5" ? { ...wire, ...more } : wire)),
    },
  });

  test("the machine's colour is taken into the diagram", () => {
    const job = drawn(seen({ colour: { base: "BN", tracer: "BK" } }), { colour: { base: "RD" } });
    const { after, label } = putRight(job, "colour-differs", "take-colour");
    expect(label).toBe("Take the machine’s colour BNBK into the diagram (W5)");
    expect(after.diagram.wires.find(({ id }) => id === "W5")?.colour).toEqual({
      base: "BN",
      tracer: "BK",
    });
  });

  test("the machine's number is taken into the diagram", () => {
    const job = drawn(seen({ number: "104" }), { number: "105" });
    const { after } = putRight(job, "number-differs", "take-number");
    expect(after.diagram.wires.find(({ id }) => id === "W5")?.number).toBe("104");
  });

  test("the path of a difference is the wires at the pin", () => {
    const job = drawn(seen({ number: "104" }), { number: "105" });
    const found = checkJob(job, "machine1").findings.find(({ rule }) => rule === "number-differs");
    expect(found?.because).toEqual(["W5"]);
  });

  test("a loose end goes on untraced, at its very pin", () => {
    const job = lampModule().part("lamp", "P2").wire("A1:1 P2:1").job;
    const { after } = putRight(job, "loose-end", "mark-as-going-on");
    const end = after.diagram.parts.find(({ kind }) => kind === "offpage");
    expect(after.diagram.wires.at(-1)).toMatchObject({ from: "P2:2", to: `${end?.id}:1` });
  });

  test("so does a line that ends at a splice, and a part wired to nothing", () => {
    putRight(
      lampModule().part("splice", "SP1").wire("A1:1 SP1:1").job,
      "loose-end",
      "mark-as-going-on",
    );
    const job = lampModule().part("fuse", "F9").job;
    const { after } = putRight(job, "loose-end", "mark-as-going-on");
    expect(after.diagram.parts.filter(({ kind }) => kind === "offpage")).toHaveLength(2);
  });

  test("chassis is never made an untraced end", () => {
    const { findings: found } = checkJob(lampModule().part("ground", "GND9").job, "machine1");
    expect(found.map(({ rule, corrections }) => [rule, corrections])).toEqual([
      ["loose-end", undefined],
    ]);
  });
});

describe("plugs", () => {
  const marks = (...list: string[]) =>
    matched(
      lampModule(),
      list.map((mark) => ({ mark })),
      [],
    ).job;

  test("two cavities exchange what they are tied to and nothing else", () => {
    const job = onMachine(matched(lampModule()), {
      wires: [{ cavity: "X1:1", number: "7" }],
      readings: [reading("R1", 24)],
    });
    const { after } = corrected(job, () => ({
      does: "exchange-cavities",
      plug: "X1",
      a: "1",
      b: "3",
    }));
    expect(after.links).toEqual([
      { pin: "A1:1", cavity: "X1:3" },
      { pin: "A1:2", cavity: "X1:2" },
      { pin: "A1:3", cavity: "X1:1" },
    ]);
    expect(after.machines).toEqual(job.machines);
    expect(after.plugs).toEqual(job.plugs);
  });

  test("a flipped face was drawn from the other side, and no point of it moves", () => {
    const job = matched(lampModule()).job;
    const { after, label } = corrected(job, () => ({ does: "flip-face", plug: "X1", moves: [] }));
    expect(label).toBe("Flip the face: it was drawn from the mating side (X1)");
    expect(after).toEqual({ ...job, plugs: [{ ...job.plugs[0], side: "mating" }] });
  });

  test("a mark given twice is corrected as the others run on", () => {
    const { after } = putRight(marks("1", "2", "2", "4"), "duplicate-mark", "correct-mark");
    expect(after.plugs[0]?.cavities.map(({ mark }) => mark)).toEqual(["1", "2", "3", "4"]);
  });

  test("letters run on with and without those that mouldings leave out", () => {
    const offers = (...list: string[]) =>
      (
        checkJob(marks(...list), "machine1").findings.find(({ rule }) => rule === "duplicate-mark")
          ?.corrections ?? []
      ).map((one) => one.does === "correct-mark" && [one.place, one.mark]);
    expect(offers("A", "B", "B", "D")).toEqual([[2, "C"]]);
    expect(offers("G", "H", "H", "K")).toEqual([[2, "J"]]);
    // I where no letter is left out, J where I is: nobody can tell.
    expect(offers("F", "G", "H", "H")).toEqual([]);
    expect(offers("1", "1", "7", "4")).toEqual([]);
    expect(offers("1", "1", "1", "4")).toEqual([]);
  });

  test("a mark is corrected without a rule's help, but never to one that is taken", () => {
    const job = matched(lampModule()).job;
    const { after } = corrected(job, () => ({ does: "correct-mark", cavity: "X1:3", mark: "4" }));
    expect(after.links.at(-1)).toEqual({ pin: "A1:3", cavity: "X1:4" });
    const session = createSession("taken", job);
    correct(session, { does: "correct-mark", cavity: "X1:3", mark: "2" });
    expect(session.get().job).toBe(job);
  });

  test("a cavity without a pin is marked empty", () => {
    const job = matched(lampModule(), [{ mark: "1" }, { mark: "2" }, { mark: "3" }, { mark: "4" }]);
    const { after } = putRight(job.job, "cavity-without-pin", "mark-empty");
    expect(after.plugs[0]?.cavities[3]?.empty).toBe(true);
  });

  test("an empty cavity with a pin is in use, or is untied", () => {
    const job = matched(lampModule(), [{ mark: "1", empty: true }, { mark: "2" }, { mark: "3" }]);
    expect(putRight(job.job, "cavity-empty", "mark-in-use").after.plugs[0]?.cavities[0]).toEqual({
      mark: "1",
      at: [0, 0],
    });
    expect(putRight(job.job, "cavity-empty", "remove-link").after.links).toHaveLength(2);
  });

  test("of a pin tied more than once one tie is kept", () => {
    const job = matched(lampModule(), undefined, [
      ["A1:1", "X1:1"],
      ["A1:1", "X1:2"],
      ["A1:1", "X1:3"],
    ]);
    const { after } = putRight(job.job, "duplicate-link", "keep-link");
    expect(after.links).toEqual([{ pin: "A1:1", cavity: "X1:1" }]);
  });

  test("the same tie written twice is one to keep", () => {
    const job = matched(lampModule(), undefined, [
      ["A1:1", "X1:1"],
      ["A1:1", "X1:1"],
    ]);
    expect(putRight(job.job, "duplicate-link", "keep-link").after.links).toHaveLength(1);
  });
});

test("a correction of something gone changes nothing", () => {
  const job = matched(lampModule()).job;
  const gone: readonly Correction[] = [
    { does: "take-colour", wire: "W99", colour: { base: "RD" } },
    { does: "flip-face", plug: "X9", moves: [{ from: "1", to: "2" }] },
    { does: "move-notes", plug: "X9", moves: [{ from: "1", to: "2" }] },
    { does: "mark-empty", cavity: "X9:1" },
    { does: "mark-as-going-on", pins: ["P9:1"] },
    { does: "move-words", module: "A9", moves: [{ from: "1", to: "2", word: "OUT" }] },
    { does: "move-words-across", moves: [{ from: "A9:1", to: "A1:1", word: "OUT" }] },
    { does: "remove-link", pin: "A1:1", cavity: "X1:9" },
    { does: "exchange-cavities", plug: "X9", a: "1", b: "2" },
    { does: "drop-role", pin: "A1:1" },
  ];
  const session = createSession("gone", job);
  for (const one of gone) correct(session, one);
  expect(session.get().job).toBe(job);
});

test("what a cavity's findings offer is listed once, and what is set aside offers nothing", () => {
  const adopt: Correction = { does: "adopt-role", pin: "A1:1", role: "ground" };
  const finding = { rule: "r", severity: "note", message: "", corrections: [adopt] } as const;
  const all = [
    { ...finding, subjects: ["A1:1"] },
    { ...finding, subjects: ["A1:1", "X1:1"] },
    { ...finding, subjects: ["A1:2"], corrections: [{ ...adopt, pin: "A1:2" }] },
  ];
  expect(correctionsAbout(all, new Set(["X1:1", "A1:1"]))).toEqual([adopt]);
  expect(
    correctionsAbout([{ ...finding, subjects: ["A1:1"], setAside: "so" }], new Set(["A1:1"])),
  ).toEqual([]);
});
