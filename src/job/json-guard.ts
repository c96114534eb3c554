import type { Issue } from "../base/index.ts";
import { LIMITS } from "./limits.ts";
import { issue } from "./wording.ts";

const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const COMMA = 0x2c;

/**
 * Looks over JSON text before it is parsed: one pass, no memory, and it stops at the first thing
 * that would make parsing dangerous. Null when the text may be parsed; it may still not be JSON.
 */
export function guardText(text: string): Issue | null {
  if (text.length > LIMITS.jobBytes) return issue("too-large", "", LIMITS.jobBytes);
  if (/^\s*$/.test(text.slice(0, 1000)) && text.trim() === "") return issue("empty", "");
  let depth = 0;
  let values = 0;
  let inString = false;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (inString) {
      if (code === BACKSLASH) at++;
      else if (code === QUOTE) inString = false;
      continue;
    }
    if (code === QUOTE) inString = true;
    else if (code === 0x5b || code === 0x7b) {
      depth++;
      values++;
      if (depth > LIMITS.nesting) return issue("too-deep", "", LIMITS.nesting);
    } else if (code === 0x5d || code === 0x7d) depth--;
    else if (code === COMMA) values++;
    if (values > LIMITS.values) return issue("too-many-values", "", LIMITS.values);
  }
  return depth > 0 || inString ? issue("cut-short", "") : null;
}

/** Keys that reach an object's prototype in careless code, here or in another program. */
const DANGEROUS_KEYS: ReadonlySet<string> = new Set(["__proto__", "constructor", "prototype"]);

/** `a.b[3]["odd key"]`: how a place in the file is written in messages. */
export function pathText(path: readonly PropertyKey[]): string {
  let text = "";
  for (const step of path) {
    if (typeof step === "number") text += `[${step}]`;
    else if (/^[A-Za-z_$][\w$]*$/.test(String(step)))
      text += `${text === "" ? "" : "."}${String(step)}`;
    else text += `[${JSON.stringify(String(step))}]`;
  }
  return text;
}

/**
 * Refuses what JSON can say but a job may not, in fields known and unknown: keys that reach a
 * prototype, and numbers that overflow (they would be written back as null). The value's depth is
 * bounded by `guardText`.
 */
export function guardValue(root: unknown): Issue | null {
  const path: PropertyKey[] = [];
  const visit = (value: unknown): Issue | null => {
    if (typeof value === "number") {
      return Number.isFinite(value) ? null : issue("number-too-large", pathText(path));
    }
    if (typeof value !== "object" || value === null) return null;
    const isList = Array.isArray(value);
    for (const key of Object.keys(value)) {
      path.push(isList ? Number(key) : key);
      if (!isList && DANGEROUS_KEYS.has(key)) {
        return issue("key-not-allowed", pathText(path), key);
      }
      const found = visit((value as Record<string, unknown>)[key]);
      if (found) return found;
      path.pop();
    }
    return null;
  };
  return visit(root);
}
