import { z } from "zod";
import type { Issue } from "../base/index.ts";
import { pathText } from "./json-guard.ts";
import { LIMITS } from "./limits.ts";
import { jobSchema } from "./schema/job.ts";
import { OUT_OF_BOUNDS } from "./schema/shared.ts";
import { issue, quoted } from "./wording.ts";

type Path = readonly PropertyKey[];

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** What a person calls a member of each list of the format. */
const NOUNS: Readonly<Record<string, string>> = {
  sheets: "sheet",
  parts: "part",
  wires: "wire",
  plugs: "plug",
  cavities: "cavity",
  links: "link",
  machines: "machine",
  changes: "change",
  readings: "reading",
  trials: "trial",
  firstChecks: "first check",
  recordings: "recording",
  steps: "step",
  standIns: "stand-in",
  pins: "pin",
  words: "word",
  adopted: "adopted role",
  setAside: "finding set aside",
  contacts: "contact",
};

/** The innermost thing with a name on the way to `path`, e.g. `wire W3`, and the field within it. */
function whereabouts(root: unknown, path: Path): { owner: string; field: string } {
  let owner = "the job";
  let from = 0;
  let value: unknown = root;
  for (const [index, step] of path.entries()) {
    const noun = NOUNS[String(path[index - 1])];
    value = (value as Record<PropertyKey, unknown> | undefined)?.[step];
    if (noun === undefined || typeof step !== "number" || !isRecord(value)) continue;
    const name = value.id ?? value.mark;
    owner =
      typeof name === "string" ? `${noun} ${quoted(name).slice(1, -1)}` : `${noun} ${step + 1}`;
    from = index + 1;
  }
  const field = pathText(path.slice(from));
  return { owner, field: field === "" ? pathText(path) : field };
}

/** A value of the file in a few words. */
function inWords(value: unknown): string {
  if (value === null) return "null";
  if (Array.isArray(value)) return value.length === 0 ? "an empty list" : "a list";
  if (typeof value === "string") return quoted(value);
  if (typeof value === "object") return "an object";
  return String(value);
}

const TYPE_WORDS: Readonly<Record<string, string>> = {
  string: "text",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list",
  tuple: "a list",
  object: "an object",
  record: "an object",
};

/** What a value that may be one of several things would have to be: `a number or "OL"`. */
function anyOf({ errors }: z.core.$ZodIssueInvalidUnion): string {
  const choices = errors.flatMap(([first]) => {
    if (first?.code === "invalid_type") return [TYPE_WORDS[first.expected] ?? first.expected];
    return first?.code === "invalid_value" ? first.values.map(inWords) : [];
  });
  return choices.join(" or ") || "something else";
}

/** An issue of the schema library in our words. */
function inOurWords(found: z.core.$ZodIssue, root: unknown, path: Path): Issue {
  const at = pathText(path);
  const { owner, field } = whereabouts(root, path);
  let value: unknown = root;
  for (const step of path) value = (value as Record<PropertyKey, unknown> | undefined)?.[step];
  if (value === undefined) return issue("missing", at, owner, field);
  const shown = inWords(value);
  switch (found.code) {
    case "invalid_type": {
      const expected = TYPE_WORDS[found.expected] ?? found.expected;
      return issue("wrong-type", at, owner, field, shown, expected);
    }
    case "invalid_value":
      return issue("not-one-of", at, owner, field, shown, found.values.map(inWords));
    case "invalid_union":
      return "options" in found && Array.isArray(found.options)
        ? issue("not-one-of", at, owner, field, shown, found.options.map(inWords))
        : issue("wrong-type", at, owner, field, shown, anyOf(found));
    default:
      return OUT_OF_BOUNDS.has(found.message)
        ? issue("number-out-of-bounds", at, owner, field, shown, found.message)
        : issue("not-allowed", at, owner, field, shown, found.message);
  }
}

/** True when the value holds at most about `limit` values; looks no further than that. */
function isSmall(value: unknown, limit = 500): boolean {
  let left = limit;
  const count = (one: unknown) => {
    if (left-- <= 0 || typeof one !== "object" || one === null) return;
    for (const member of Object.values(one)) {
      count(member);
      if (left <= 0) return;
    }
  };
  count(value);
  return left > 0;
}

function unwrapped(schema: z.core.$ZodType): z.core.$ZodType {
  return schema instanceof z.ZodOptional ? unwrapped(schema.unwrap()) : schema;
}

/** The member schema of a union told apart by `kind` or the like, for this value. */
function optionFor(union: z.ZodDiscriminatedUnion, value: Record<string, unknown>) {
  const key = union.def.discriminator;
  return union.options.find(
    (option) =>
      option instanceof z.ZodObject &&
      (option.shape[key] as z.ZodType | undefined)?.safeParse(value[key]).success,
  );
}

/**
 * Checks a value against a schema, stopping soon after `LIMITS.issues` faults. A schema library
 * collects every fault before it answers, and a hostile file can hold millions; so a large value
 * is taken apart along its schema and handed over in small pieces.
 */
function collect(schema: z.core.$ZodType, root: unknown, value: unknown, path: Path, to: Issue[]) {
  if (to.length >= LIMITS.issues) return;
  const inner = unwrapped(schema);
  if (!isSmall(value)) {
    if (inner instanceof z.ZodArray && Array.isArray(value)) {
      for (let n = 0; n < value.length && to.length < LIMITS.issues; n++) {
        collect(inner.element, root, value[n], [...path, n], to);
      }
      return;
    }
    if (isRecord(value)) {
      const shape = inner instanceof z.ZodDiscriminatedUnion ? optionFor(inner, value) : inner;
      if (shape instanceof z.ZodObject) {
        for (const [key, field] of Object.entries(shape.shape)) {
          if (key in value || !(field instanceof z.ZodOptional)) {
            collect(field as z.ZodType, root, value[key], [...path, key], to);
          }
        }
        return;
      }
      if (inner instanceof z.ZodRecord) {
        for (const [key, member] of Object.entries(value)) {
          collect(inner.valueType, root, member, [...path, key], to);
        }
        return;
      }
    }
  }
  const result = z.safeParse(inner, value);
  if (result.success || (value === undefined && schema !== inner)) return;
  for (const found of result.error.issues) {
    if (to.length < LIMITS.issues) to.push(inOurWords(found, root, [...path, ...found.path]));
  }
}

/** What keeps a parsed file from being a job, as far as its shape goes; empty when nothing does. */
export function schemaIssues(root: unknown): readonly Issue[] {
  const issues: Issue[] = [];
  collect(jobSchema, root, root, [], issues);
  return issues;
}
