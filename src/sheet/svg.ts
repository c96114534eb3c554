import type { Colour } from "../job/index.ts";
import { colourBands } from "../standards/index.ts";

/** Text from a job becomes text in a drawing and never markup. */
export function escapeXml(text: string): string {
  return text
    .replace(/[^\P{Cc}\t\n\r]|\p{Cs}|[\ufffe\uffff]/gu, "")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replaceAll("'", "&#39;");
}

const n = (value: number) => String(Math.round(value * 100) / 100);

type Attributes = Readonly<Record<string, string | number>>;

/** One element; numbers are rounded to a hundredth of a point. */
export function element(name: string, attributes: Attributes, inside = ""): string {
  const list = Object.entries(attributes)
    .map(([key, value]) => ` ${key}="${typeof value === "number" ? n(value) : escapeXml(value)}"`)
    .join("");
  return inside === "" ? `<${name}${list}/>` : `<${name}${list}>${inside}</${name}>`;
}

export interface TextStyle {
  readonly size: number;
  readonly bold?: boolean;
  readonly fill?: string;
}

/** A line of text with its middle at x and its baseline at y. */
export function centredText(x: number, y: number, text: string, style: TextStyle): string {
  return element(
    "text",
    {
      x,
      y,
      "text-anchor": "middle",
      "font-family": SHEET_FONT_FAMILY,
      "font-weight": style.bold ? "bold" : "normal",
      "font-size": style.size,
      fill: style.fill ?? INK,
    },
    escapeXml(text),
  );
}

export const SHEET_FONT_FAMILY = "Plex";
export const INK = "#111111";

/**
 * A length of wire: the insulation with the thin tracer along it, outlined so that white and
 * yellow show on paper and black shows beside a black one.
 */
export function wireSwatch(
  colour: Colour,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): string {
  const { x, y, width, height } = box;
  const { base, stripe, edge: rim } = colourBands(colour);
  const along = (fill: string, share: number) =>
    element("rect", { x, y: y + (height * (1 - share)) / 2, width, height: height * share, fill });
  const edge = { x, y, width, height, rx: height * 0.2 };
  return [
    element("rect", { ...edge, fill: base }),
    rim ? along(rim, 0.46) : "",
    stripe ? along(stripe, 0.34) : "",
    element("rect", { ...edge, fill: "none", stroke: INK, "stroke-width": 0.6 }),
  ].join("");
}

/** A whole drawing, points. */
export function drawing(width: number, height: number, inside: string): string {
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      width,
      height,
      viewBox: `0 0 ${n(width)} ${n(height)}`,
    },
    inside,
  );
}
