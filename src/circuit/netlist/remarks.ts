const WIDTH = 96;
const LONGEST = 300;

/**
 * A job's own text made fit for a remark: on one line, without what moves a cursor or turns the
 * writing round, and without backslashes, two of which join a line to the next in some simulators.
 */
export function harmless(text: string): string {
  const tamed = text
    .slice(0, 2 * LONGEST)
    .replace(/[\s\p{Z}]+/gu, " ")
    .replace(/[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Cn}]/gu, "?")
    .replaceAll("\\", "/")
    .trim();
  return tamed.length > LONGEST ? `${tamed.slice(0, LONGEST - 3)}...` : tamed;
}

/** A remark of as many lines as it needs, those after the first set in by `indent` spaces. */
export function remark(text: string, indent = 2): readonly string[] {
  const lines: string[] = [];
  let line = "";
  // a space after the asterisk: "*#" is a command to some simulators
  const start = () => (lines.length === 0 ? "* " : `* ${" ".repeat(indent)}`);
  for (const word of harmlessWords(text)) {
    if (line !== "" && line.length + 1 + word.length > WIDTH) {
      lines.push(start() + line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  lines.push(start() + line);
  return lines;
}

const harmlessWords = (text: string): readonly string[] =>
  text
    .split(/[\s\p{Z}]+/u)
    .map(harmless)
    .filter((word) => word !== "");
