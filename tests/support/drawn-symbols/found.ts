import { type Box, boundsOf, type Point, seededRandom } from "../../../src/base/index.ts";
import { preparePage } from "../../../src/scan/lines/prepared-page.ts";
import { greyFrom } from "../../../src/scan/raster.ts";
import { finished } from "../../../src/scan/sliced.ts";
import { findSymbols } from "../../../src/scan/symbols/find-symbols.ts";
import type { SymbolProposal } from "../../../src/scan/symbols/symbol-proposal.ts";
import { harmed, randomHarm } from "../drawn-pages/degrade.ts";
import { type PrintedPart, symbolSheet } from "./page.ts";

/** Proposals of drawn pages, each right or wrong, and the parts that none was right of. */
export interface Judged {
  readonly proposals: readonly { readonly proposal: SymbolProposal; readonly isRight: boolean }[];
  readonly missed: readonly PrintedPart[];
  readonly parts: number;
}

/** Draws the page of a seed, harms it so much (0 to 1) and has its symbols found. */
export async function judgedSheet(seed: number, level: number): Promise<Judged> {
  const random = seededRandom(seed);
  const sheet = symbolSheet(random);
  const out = await harmed(
    random,
    sheet.picture,
    { ...randomHarm(random, level), slant: 0 },
    sheet.line,
  );
  const found = finished(
    findSymbols(finished(preparePage(greyFrom(out.picture))), { examples: [] }),
  );
  return judge(
    found,
    sheet.parts.map((part) => ({
      ...part,
      at: out.moved(part.at),
      box: movedBox(part.box, out.moved),
    })),
  );
}

function movedBox({ left, top, right, bottom }: Box, moved: (at: Point) => Point): Box {
  const corners: readonly Point[] = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  return boundsOf(corners.map(moved)) as Box;
}

/** A proposal is right of a part of its kind whose box it shares; each part is proposed once. */
export function judge(found: readonly SymbolProposal[], parts: readonly PrintedPart[]): Judged {
  const open = new Set(parts);
  const proposals = found.map((proposal) => {
    const part = [...open].find(
      ({ kind, box }) => kind === proposal.kind && inCommon(box, proposal.box) > 0.35,
    );
    if (part) open.delete(part);
    return { proposal, isRight: part !== undefined };
  });
  return { proposals, missed: [...open], parts: parts.length };
}

/** Area in common to area of both together. */
function inCommon(a: Box, b: Box): number {
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  if (width <= 0 || height <= 0) return 0;
  const areaOf = ({ left, top, right, bottom }: Box) => (right - left) * (bottom - top);
  return (width * height) / (areaOf(a) + areaOf(b) - width * height);
}
