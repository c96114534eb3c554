import { distance } from "../../../base/index.ts";
import type { Plug } from "../../../job/index.ts";
import {
  type Arrangement,
  CONFUSABLE_LETTERS,
  type Corner,
  type Edge,
  edgeOf,
  type FacePlan,
  type LibraryFace,
  type MarkOrder,
  type MarkStyle,
  outlineAround,
  placesOf,
  RELAY_MARKS,
  repeatedMarks,
  ringsByPitch,
  type Side,
  spacingOf,
  splitMarks,
} from "../../../plug/index.ts";
import type { TrailerPlug } from "../../../standards/index.ts";

export type ArrangementKind = "grid" | "staggered" | "rings" | "relay" | "free";
export type MarkKind = "numbers" | "letters" | "clear-letters" | "typed";

/** What stands in the fields of the drawing dialog; numbers as typed. */
export interface PlanForm {
  readonly name: string;
  readonly side: Side;
  readonly holds: "" | "pins" | "sockets";
  readonly kind: ArrangementKind;
  readonly rows: string;
  readonly columns: string;
  readonly pitch: string;
  readonly rowPitch: string;
  readonly shift: "left" | "right" | "nested";
  /** Cavities in each ring, outermost first. */
  readonly rings: string;
  readonly centre: boolean;
  readonly ringFrom: string;
  readonly layout: "30-below" | "86-below";
  readonly marks: MarkKind;
  readonly first: string;
  readonly typed: string;
  readonly run: MarkOrder["run"];
  readonly start: Corner;
  readonly turn: MarkOrder["turn"];
  readonly ringOrder: MarkOrder["rings"];
  readonly housing: "rectangle" | "circle";
  readonly latch: Edge | "none";
  readonly key: Edge | "none";
  /** Whether only the marks are known and not where they lie. */
  readonly neutral: boolean;
  /** The published table that the marks are from; null for marks of the user's own. */
  readonly published: TrailerPlug | null;
}

export const EMPTY_FORM: PlanForm = {
  name: "",
  side: "mating",
  holds: "",
  kind: "grid",
  rows: "2",
  columns: "4",
  pitch: "5",
  rowPitch: "5",
  shift: "right",
  rings: "8",
  centre: false,
  ringFrom: "0",
  layout: "30-below",
  marks: "numbers",
  first: "1",
  typed: "",
  run: "across",
  start: "top-left",
  turn: "clockwise",
  ringOrder: "outer-first",
  housing: "rectangle",
  latch: "top",
  key: "none",
  neutral: false,
  published: null,
};

/** The fields that a face of the library fills in. */
export function libraryForm({ plan, published }: LibraryFace): PlanForm {
  return {
    ...EMPTY_FORM,
    ...arrangementFields(plan.arrangement),
    ...markFields(plan.marks),
    run: plan.order.run,
    start: plan.order.start,
    turn: plan.order.turn,
    ringOrder: plan.order.rings,
    housing: plan.housing,
    latch: plan.latch ?? "none",
    key: plan.key ?? "none",
    name: published?.standard ?? "",
    neutral: published !== undefined,
    published: published ?? null,
  };
}

function arrangementFields(arrangement: Arrangement): Partial<PlanForm> {
  switch (arrangement.kind) {
    case "grid":
    case "staggered": {
      const { kind, rows, columns, pitch } = arrangement;
      return {
        kind,
        rows: String(rows),
        columns: String(columns),
        pitch: String(pitch[0]),
        rowPitch: String(pitch[1]),
        ...(kind === "staggered"
          ? { shift: arrangement.nested ? ("nested" as const) : arrangement.shift }
          : {}),
      };
    }
    case "rings":
      return {
        kind: "rings",
        rings: arrangement.rings.map((ring) => ring.count).join(" "),
        centre: arrangement.centre,
        ringFrom: String(arrangement.rings[0]?.from ?? 0),
      };
    case "relay":
      return { kind: "relay", layout: arrangement.layout };
    case "free":
      return { kind: "free" };
  }
}

function markFields(marks: MarkStyle): Partial<PlanForm> {
  switch (marks.style) {
    case "numbers":
      return { marks: "numbers", first: String(marks.first) };
    case "letters":
      return { marks: marks.leaveOut.length > 0 ? "clear-letters" : "letters" };
    case "typed":
      return { marks: "typed", typed: marks.marks.join(" ") };
  }
}

/** The fields that another choice of arrangement brings with it. */
export function withKind(form: PlanForm, kind: ArrangementKind): PlanForm {
  const typed = RELAY_MARKS.join(" ");
  const wasRelay = form.typed === typed;
  switch (kind) {
    case "relay":
      return { ...form, kind, marks: "typed", typed, housing: "rectangle", latch: "none" };
    case "rings":
      return {
        ...form,
        ...(wasRelay ? PLAIN_MARKS : {}),
        kind,
        housing: "circle",
        latch: "none",
        key: "top",
      };
    default:
      return { ...form, ...(wasRelay ? PLAIN_MARKS : {}), kind, housing: "rectangle" };
  }
}

const PLAIN_MARKS = { marks: "numbers", typed: "" } as const;

/** More rows or cavities than any plug has: a slip of the finger. */
const MOST_IN_LINE = 60;
const MOST_CAVITIES = 400;

const whole = (text: string) => (/^\s*\d+\s*$/.test(text) ? Number(text) : Number.NaN);
/** Millimetres or degrees, with comma or point. */
const decimal = (text: string) =>
  /^\s*-?\d+([.,]\d+)?\s*(mm|°)?\s*$/.test(text)
    ? Number(text.replace(",", ".").replace(/\s*(mm|°)/, ""))
    : Number.NaN;

/** The plan that the fields describe, or the first thing wrong with them in one sentence. */
export function planOf(form: PlanForm): FacePlan | { readonly problem: string } {
  const arrangement = arrangementOf(form);
  if ("problem" in arrangement) return arrangement;
  const count = placesOf(arrangement).length;
  if (count > MOST_CAVITIES) return { problem: `A face has at most ${MOST_CAVITIES} cavities.` };
  const marks = markStyleOf(form, count);
  if ("problem" in marks) return marks;
  return {
    arrangement,
    marks,
    order: { run: form.run, start: form.start, turn: form.turn, rings: form.ringOrder },
    housing: form.housing,
    latch: form.latch === "none" ? null : form.latch,
    key: form.key === "none" ? null : form.key,
  };
}

function arrangementOf(form: PlanForm): Arrangement | { readonly problem: string } {
  if (form.kind === "free") return { kind: "free", points: [] };
  if (form.kind === "relay") return { kind: "relay", layout: form.layout };
  const pitch = decimal(form.pitch);
  if (!(pitch > 0 && pitch <= 100))
    return { problem: "Give the pitch in millimetres, 0.1 to 100." };
  if (form.kind === "rings") {
    const counts = splitMarks(form.rings).map(whole);
    if (counts.length === 0 || !counts.every((count) => count >= 1 && count <= MOST_IN_LINE)) {
      return { problem: "Give the cavities of each ring, the outermost first, as in 10 5." };
    }
    const from = decimal(form.ringFrom);
    if (!Number.isFinite(from)) return { problem: "Give the first cavity's angle in degrees." };
    const rings = ringsByPitch(counts, pitch, form.centre, from);
    return { kind: "rings", rings, centre: form.centre };
  }
  const rows = whole(form.rows);
  const columns = whole(form.columns);
  const inLine = (count: number) => count >= 1 && count <= MOST_IN_LINE;
  if (!inLine(rows) || !inLine(columns)) {
    return { problem: `Give rows and columns as whole numbers, 1 to ${MOST_IN_LINE}.` };
  }
  const between = decimal(form.rowPitch);
  if (!(between > 0 && between <= 100)) {
    return { problem: "Give the distance of the rows in millimetres, 0.1 to 100." };
  }
  if (form.kind === "grid") return { kind: "grid", rows, columns, pitch: [pitch, between] };
  return {
    kind: "staggered",
    rows,
    columns,
    pitch: [pitch, between],
    shift: form.shift === "left" ? "left" : "right",
    nested: form.shift === "nested",
  };
}

export function markStyleOf(
  form: Pick<PlanForm, "marks" | "first" | "typed">,
  count: number,
): MarkStyle | { readonly problem: string } {
  switch (form.marks) {
    case "numbers": {
      const first = whole(form.first);
      if (!(first >= 0 && first < 100_000)) return { problem: "Give the first number." };
      return { style: "numbers", first };
    }
    case "letters":
      return { style: "letters", leaveOut: [] };
    case "clear-letters":
      return { style: "letters", leaveOut: CONFUSABLE_LETTERS };
    case "typed": {
      const marks = splitMarks(form.typed);
      const [repeated] = repeatedMarks(marks);
      if (repeated !== undefined) return { problem: `Two cavities cannot both be ${repeated}.` };
      if (marks.length < count) {
        return { problem: `${count} cavities, but only ${marks.length} marks typed.` };
      }
      return { style: "typed", marks };
    }
  }
}

/** Fields to start from when an existing plug is drawn anew. */
export function formOf(plug: Plug): PlanForm {
  const outline = plug.outline ?? outlineAround(plug.cavities, "rectangle");
  const edgeOfKind = (kind: "latch" | "key") => {
    const key = plug.keys?.find((one) => one.kind === kind);
    return key ? edgeOf(outline, key) : "none";
  };
  const marks = plug.cavities.map((cavity) => cavity.mark);
  const counted = marks.every((mark, index) => mark === String(index + 1));
  return {
    ...EMPTY_FORM,
    name: plug.name ?? "",
    side: plug.side,
    holds: plug.holds ?? "",
    ...(gridOf(plug) ?? ringsOf(plug) ?? {}),
    ...(counted ? {} : { marks: "typed", typed: marks.join(" ") }),
    housing: outline.shape === "circle" ? "circle" : "rectangle",
    latch: edgeOfKind("latch"),
    key: edgeOfKind("key"),
    neutral: plug.neutral ?? false,
  };
}

const hundredths = (value: number) => Math.round(value * 100) / 100;

/** Rows, columns and pitch where the cavities fill a grid. */
function gridOf(plug: Plug): Partial<PlanForm> | null {
  const distinct = (axis: 0 | 1) =>
    [...new Set(plug.cavities.map(({ at }) => hundredths(at[axis])))].sort((a, b) => a - b);
  const [xs, ys] = [distinct(0), distinct(1)];
  if (plug.cavities.length === 0 || xs.length * ys.length !== plug.cavities.length) return null;
  const step = (values: number[]) => {
    const [first, second] = values;
    return first !== undefined && second !== undefined
      ? String(hundredths(second - first))
      : EMPTY_FORM.pitch;
  };
  return {
    rows: String(ys.length),
    columns: String(xs.length),
    pitch: step(xs),
    rowPitch: step(ys),
  };
}

/** Cavities of each ring where a round housing has them at a few distances from its middle. */
function ringsOf(plug: Plug): Partial<PlanForm> | null {
  if (plug.outline?.shape !== "circle") return null;
  const middle = plug.outline.at;
  const counts = new Map<number, number>();
  for (const { at } of plug.cavities) {
    const radius = Math.round(distance(at, middle) * 10) / 10;
    counts.set(radius, (counts.get(radius) ?? 0) + 1);
  }
  const rings = [...counts].sort(([a], [b]) => b - a);
  if (rings.length > 5) return null;
  const centre = rings.at(-1)?.[0] === 0;
  const first = plug.cavities[0]?.at ?? middle;
  const angle = (Math.atan2(first[0] - middle[0], middle[1] - first[1]) * 180) / Math.PI;
  return {
    kind: "rings",
    rings: (centre ? rings.slice(0, -1) : rings).map(([, count]) => count).join(" "),
    centre,
    pitch: String(hundredths(spacingOf(plug.cavities))),
    ringFrom: String(Math.round(angle)),
  };
}
