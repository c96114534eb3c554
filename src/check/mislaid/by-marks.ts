import { type CavityRef, type Colour, cavityRef, type Plug } from "../../job/index.ts";
import { otherTurn, type Turn, turnOfLetters } from "../../plug/index.ts";
import { LETTER_DIRECTION, parseColour, TRAILER_PLUGS } from "../../standards/index.ts";
import { mirrored } from "./hypotheses.ts";

/** What the marks of a face say by themselves of the side that it was drawn from. */
export type MarksSay =
  /** Letters run the other way than published for what the plug holds; ways as seen where it mates. */
  | { readonly is: "letters"; readonly run: Turn; readonly holds: "pins" | "sockets" }
  /** Colours found stand at the images of the marks that a published table has them at. */
  | { readonly is: "published-colours"; readonly standard: string; readonly agree: number };

/** Colours that stand at the images, at least: fewer may be chance. */
const LEAST_COLOURS = 3;

/** The same colours: the tables do not say which of two is the stripe. */
const isPair = (a: Colour, b: Colour): boolean =>
  [a.base, a.tracer].sort().join() === [b.base, b.tracer].sort().join();

/** Null where the marks say nothing: most plugs are marked either way. */
export const saidByMarks = (
  plug: Plug,
  colours: readonly { readonly cavity: CavityRef; readonly colour?: Colour | undefined }[],
): MarksSay | null => saidByLetters(plug) ?? saidByPublished(plug, colours);

function saidByLetters(plug: Plug): MarksSay | null {
  const { holds, side } = plug;
  const drawn = holds === undefined ? null : turnOfLetters(plug);
  if (drawn === null || holds === undefined) return null;
  const run = side === "mating" ? drawn : otherTurn(drawn);
  return run === LETTER_DIRECTION[holds] ? null : { is: "letters", run, holds };
}

/** The name says which table it is of; of a neutral drawing no cavity has an image that means anything. */
function saidByPublished(plug: Plug, colours: Parameters<typeof saidByMarks>[1]): MarksSay | null {
  if (plug.neutral || plug.name === undefined) return null;
  const name = plug.name.toUpperCase();
  const marks = plug.cavities.map(({ mark }) => mark);
  const table = TRAILER_PLUGS.find(
    ({ standard, pins }) =>
      name.includes(standard.toUpperCase()) &&
      pins.length === marks.length &&
      pins.every(({ mark }) => marks.includes(mark)),
  );
  const [turned] = mirrored(plug);
  if (!table || !turned) return null;
  const published = new Map(
    table.pins.map(({ mark, colour }) => [mark, colour === null ? null : parseColour(colour)]),
  );
  let agree = 0;
  for (const mark of marks) {
    const found = colours.find(({ cavity }) => cavity === cavityRef(plug.id, mark))?.colour;
    const there = turned.really.get(mark) ?? mark;
    const own = published.get(mark);
    const image = published.get(there);
    if (!found || there === mark || !own || !image) continue;
    if (isPair(found, own) || !isPair(found, image)) return null;
    agree++;
  }
  return agree < LEAST_COLOURS
    ? null
    : { is: "published-colours", standard: table.standard, agree };
}
