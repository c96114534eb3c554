import { Circle, Group, Line, Rect, Text } from "react-konva";
import type { Point } from "../../../base/index.ts";
import { formatColour } from "../../../standards/index.ts";
import type { Palette } from "../../theme/theme.tsx";
import type { CavityFacts } from "./cavity-facts.ts";
import { VerdictShape } from "./verdict-shape.tsx";
import { WireShape } from "./wire-shape.tsx";

export type Light = "chosen" | "lit" | null;

interface CavityShapeProps {
  facts: CavityFacts;
  at: Point;
  /** Distance of the nearest neighbours on the board, pixels. */
  spacing: number;
  light: Light;
  /** Whether the terminals in it are pins (a dot) or sockets (a ring); null where not said. */
  holds: "pins" | "sockets" | null;
  /** Text gets a rim of paper where a photo lies behind it. */
  rimmed: boolean;
  palette: Palette;
}

const FONT = "IBM Plex Sans, system-ui, sans-serif";
/** Average width of a character of the labels, as a share of their size. */
const CHARACTER = 0.62;

/** Lengths on the board for one spacing; cavities and words grow with the zoom, within limits. */
export function cavitySizes(spacing: number) {
  const radius = Math.min(40, spacing * 0.28);
  return {
    radius,
    mark: Math.max(11, Math.min(26, radius * 0.86)),
    label: Math.max(12, Math.min(18, spacing * 0.16)),
    wire: Math.max(6, Math.min(16, spacing * 0.13)),
    stub: Math.min(44, spacing * 0.26),
    badge: Math.max(6, Math.min(12, spacing * 0.1)),
  };
}

export function CavityShape(props: CavityShapeProps) {
  const { facts, at, spacing, light, palette } = props;
  const sizes = cavitySizes(spacing);
  return (
    <Group x={at[0]} y={at[1]}>
      {light && <Halo radius={sizes.radius} light={light} palette={palette} />}
      {facts.colour && (
        <WireShape
          points={[
            [0, sizes.radius * 0.7],
            [0, sizes.radius + sizes.stub],
          ]}
          colour={facts.colour}
          width={sizes.wire}
          outline={palette.ink}
        />
      )}
      <Opening {...props} radius={sizes.radius} />
      <Text
        text={facts.mark}
        width={200}
        x={-100}
        y={-sizes.mark * 0.5}
        align="center"
        fontFamily={FONT}
        fontSize={facts.mark.length > 2 ? sizes.mark * 0.8 : sizes.mark}
        fontStyle="600"
        fill={facts.state === "blocked" ? palette.paperRaised : palette.ink}
      />
      <Labels {...props} />
      {facts.verdict && (
        <VerdictShape
          verdict={facts.verdict}
          x={sizes.radius * 0.82}
          y={-sizes.radius * 0.82}
          reach={sizes.badge}
          palette={palette}
        />
      )}
      {facts.lead && <LeadFlag lead={facts.lead} radius={sizes.radius} palette={palette} />}
    </Group>
  );
}

function Halo({ radius, light, palette }: { radius: number; light: Light; palette: Palette }) {
  return light === "chosen" ? (
    <Circle radius={radius + 7} fill={palette.accentWash} stroke={palette.accent} strokeWidth={4} />
  ) : (
    <Circle
      radius={radius + 5}
      fill={palette.accentWash}
      stroke={palette.accent}
      strokeWidth={2}
      dash={[6, 4]}
    />
  );
}

/** A hole to put a terminal in; one without a wire is broken, one that is plugged is solid. */
function Opening({ facts, holds, palette, radius }: CavityShapeProps & { radius: number }) {
  const { opening } = facts.cavity;
  const stroke = palette.ink;
  if (facts.state === "blocked") {
    const half = radius * 0.92;
    return (
      <>
        <Rect
          x={-half}
          y={-half}
          width={2 * half}
          height={2 * half}
          cornerRadius={radius * 0.2}
          fill={palette.inkSoft}
          stroke={stroke}
          strokeWidth={2}
        />
        <Line points={[-half, -half, half, half]} stroke={stroke} strokeWidth={1.5} />
        <Line points={[-half, half, half, -half]} stroke={stroke} strokeWidth={1.5} />
      </>
    );
  }
  const empty = facts.state === "empty";
  const line = {
    stroke: empty ? palette.inkSoft : stroke,
    strokeWidth: empty ? 1.5 : 2,
    dash: empty ? [4, 5] : [],
    fill: empty ? "transparent" : palette.paper,
  };
  if (opening === "blade-across" || opening === "blade-upright") {
    const long = radius * 1.08;
    const short = radius * 0.72;
    const [x, y] = opening === "blade-across" ? [long, short] : [short, long];
    return (
      <Rect x={-x} y={-y} width={2 * x} height={2 * y} cornerRadius={radius * 0.18} {...line} />
    );
  }
  return (
    <>
      <Circle radius={radius} {...line} />
      {!empty && holds === "sockets" && (
        <Circle radius={radius * 0.8} stroke={palette.ruleStrong} strokeWidth={1} />
      )}
      {!empty && holds === "pins" && (
        <Circle radius={radius * 0.8} fill={palette.rule} opacity={0.55} />
      )}
    </>
  );
}

/** The colour's code beside the wire, and the pin tied to it where there is room for both. */
function Labels({ facts, spacing, rimmed, palette }: CavityShapeProps) {
  const { radius, label, wire, stub } = cavitySizes(spacing);
  const code = facts.colour ? formatColour(facts.colour) : null;
  const beside = wire / 2 + 4;
  const room = spacing / 2 - beside;
  const widthOf = (text: string) => text.length * CHARACTER * label;
  const codeFits = code !== null && widthOf(code) <= room + 4;
  const codeFitsBelow = code !== null && widthOf(code) <= spacing + 4;
  const text = {
    fontFamily: FONT,
    fontSize: label,
    fill: palette.ink,
    wrap: "none",
    ...(rimmed
      ? { stroke: palette.paperRaised, strokeWidth: 4, fillAfterStrokeEnabled: true }
      : {}),
  } as const;
  const y = radius + Math.max(3, stub - label);
  return (
    <>
      {code !== null && codeFits && (
        <Text {...text} text={code} x={beside} y={y} fontStyle={codeStyle(facts)} />
      )}
      {code !== null && !codeFits && codeFitsBelow && (
        <Text
          {...text}
          text={code}
          x={-spacing}
          width={2 * spacing}
          align="center"
          y={radius + stub + 2}
          fontStyle={codeStyle(facts)}
        />
      )}
      {facts.pin !== null && codeFits && widthOf(facts.pin) <= room + 4 && (
        <Text
          {...text}
          text={facts.pin}
          x={-beside - spacing}
          width={spacing}
          align="right"
          y={y}
          fill={palette.inkSoft}
        />
      )}
      {facts.pin !== null && code === null && widthOf(facts.pin) <= spacing && (
        <Text
          {...text}
          text={facts.pin}
          x={-spacing}
          width={2 * spacing}
          align="center"
          y={radius + 5}
          fill={palette.inkSoft}
        />
      )}
    </>
  );
}

/** A colour only read off the diagram leans: nobody has seen it on this machine yet. */
const codeStyle = (facts: CavityFacts) => (facts.colourFrom === "diagram" ? "italic 500" : "600");

function LeadFlag({
  lead,
  radius,
  palette,
}: {
  lead: "red" | "black";
  radius: number;
  palette: Palette;
}) {
  return (
    <Group x={-radius - 6} y={-radius - 10}>
      <Rect
        width={46}
        height={20}
        cornerRadius={10}
        fill={lead === "red" ? "#b3131b" : "#1c1c1c"}
        stroke={palette.paperRaised}
        strokeWidth={1.5}
      />
      <Text
        text={lead}
        width={46}
        height={20}
        align="center"
        verticalAlign="middle"
        fontFamily={FONT}
        fontSize={14}
        fontStyle="600"
        fill="#ffffff"
      />
    </Group>
  );
}
