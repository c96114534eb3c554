import { pathText } from "../job/index.ts";

/** Where one is inside brackets. */
interface Inside {
  /** The names of an object so far; null in a list. */
  readonly names: Set<string> | null;
  /** The name, or the number in a list, of what comes next or was last. */
  step: string | number;
}

/**
 * The place of the first name that an object has twice, as messages write it; null where none has.
 * `text` must be JSON: its parser keeps the last one of two and says nothing.
 */
export function doubledKey(text: string): string | null {
  const way: Inside[] = [];
  let last = "";
  for (let at = 0; at < text.length; at++) {
    const here = way.at(-1);
    const letter = text[at];
    if (letter === '"') {
      const end = endOfText(text, at);
      last = text.slice(at, end + 1);
      at = end;
    } else if (letter === "{") way.push({ names: new Set(), step: "" });
    else if (letter === "[") way.push({ names: null, step: 0 });
    else if (letter === "}" || letter === "]") way.pop();
    else if (letter === "," && typeof here?.step === "number") here.step++;
    else if (letter === ":" && here?.names) {
      here.step = JSON.parse(last) as string;
      if (here.names.has(here.step)) return pathText(way.map(({ step }) => step));
      here.names.add(here.step);
    }
  }
  return null;
}

/** Of a text in quotes that begins at a place, the place of the last quote. */
function endOfText(json: string, from: number): number {
  let at = from + 1;
  while (json[at] !== '"') at += json[at] === "\\" ? 2 : 1;
  return at;
}
