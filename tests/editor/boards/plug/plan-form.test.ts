import { expect, test } from "vitest";
import {
  EMPTY_FORM,
  formOf,
  type PlanForm,
  planOf,
  withKind,
} from "../../../../src/editor/boards/plug/plan-form.ts";
import { faceOf } from "../../../../src/plug/index.ts";
import { fourWay } from "./sample.ts";

const faceFrom = (form: PlanForm) => {
  const plan = planOf(form);
  if ("problem" in plan) throw new Error(plan.problem);
  return faceOf(plan);
};
const problemOf = (change: Partial<PlanForm>) => {
  const plan = planOf({ ...EMPTY_FORM, ...change });
  return "problem" in plan ? plan.problem : null;
};

test("lengths are read with comma or point, and with their unit", () => {
  const face = faceFrom({ ...EMPTY_FORM, rows: "1", columns: "2", pitch: "6,3 mm" });
  expect(face.cavities.map((cavity) => cavity.at)).toEqual([
    [-3.15, 0],
    [3.15, 0],
  ]);
});

test.each<[Partial<PlanForm>, RegExp]>([
  [{ rows: "0" }, /whole numbers/],
  [{ columns: "2.5" }, /whole numbers/],
  [{ rows: "5000" }, /whole numbers/],
  [{ rows: "50", columns: "50" }, /at most 400/],
  [{ pitch: "wide" }, /pitch/],
  [{ rowPitch: "-4" }, /distance of the rows/],
  [{ kind: "rings", rings: "" }, /each ring/],
  [{ kind: "rings", rings: "8 x" }, /each ring/],
  [{ marks: "typed", typed: "1 2 3" }, /only 3 marks/],
  [{ marks: "typed", typed: "1 2 3 4 5 6 7 1" }, /both be 1/],
])("%j is refused in words", (change, words) => {
  expect(problemOf(change)).toMatch(words);
});

test("a relay socket comes with its marks and gives them back to the next arrangement", () => {
  const relay = withKind(EMPTY_FORM, "relay");
  expect(faceFrom(relay).cavities.map((cavity) => cavity.mark)).toEqual([
    "30",
    "85",
    "86",
    "87",
    "87a",
  ]);
  const grid = withKind(relay, "grid");
  expect(faceFrom(grid).cavities.map((cavity) => cavity.mark)).toEqual([
    "1",
    "2",
    "3",
    "4",
    "5",
    "6",
    "7",
    "8",
  ]);
});

test("a plug that was drawn as a grid comes back into the same fields", () => {
  const form = formOf(fourWay);
  expect(form).toMatchObject({
    rows: "2",
    columns: "2",
    pitch: "4",
    rowPitch: "4",
    latch: "top",
    key: "none",
  });
  expect(faceFrom(form).cavities).toEqual(fourWay.cavities);
});

test("rings of ten and five make fifteen cavities, none closer than the pitch", () => {
  const face = faceFrom({ ...withKind(EMPTY_FORM, "rings"), rings: "10 5", pitch: "6" });
  expect(face.cavities).toHaveLength(15);
  expect(face.outline.shape).toBe("circle");
});

test("a round plug comes back as its rings", () => {
  const drawn = { ...withKind(EMPTY_FORM, "rings"), rings: "10 5", pitch: "6", ringFrom: "18" };
  const form = formOf({ id: "X1", side: "wire", ...faceFrom({ ...drawn, centre: true }) });
  expect(form).toMatchObject({
    kind: "rings",
    side: "wire",
    rings: "10 5",
    centre: true,
    pitch: "6",
    ringFrom: "18",
    housing: "circle",
    key: "top",
  });
});
