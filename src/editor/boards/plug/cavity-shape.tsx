import { memo } from "react";
import { Circle, Group, Line, Rect, Text } from "react-konva";
import type { Point } from "../../../base/index.ts";
import type { Palette } from "../../theme/theme.tsx";
import type { CavityFacts } from "./cavity-facts.ts";
import type { CavityLayout } from "./cavity-layout.ts";
import { LiveBadge } from "./live-badge.tsx";
import { BOARD_FONT } from "./use-fonts.ts";
import { VerdictShape } from "./verdict-shape.tsx";
import { WireShape } from "./wire-shape.tsx";

export type Light = "chosen" | "lit" | null;

interface CavityShapeProps {
  facts: CavityFacts;
  at: Point;
  layout: CavityLayout;
  light: Light;
  /** Whether the terminals in it are pins (a dot) or sockets (a ring); null where not said. */
  holds: "pins" | "sockets" | null;
  /** Text gets a rim of paper where a photo lies behind it. */
  rimmed: boolean;
  palette: Palette;
}

/** One cavity on the canvas; drawn anew only when something of it is another. */
export const CavityShape = memo(function CavityShape(props: CavityShapeProps) {
  const { facts, at, layout, light, palette } = props;
  return (
    <Group x={at[0]} y={at[1]}>
      {light && <Halo radius={layout.radius} light={light} palette={palette} />}
      {facts.colour && (
        <WireShape
          points={[
            [0, layout.radius * 0.7],
            [0, layout.radius + layout.stub],
          ]}
          colour={facts.colour}
          width={layout.wire}
          outline={palette.ink}
        />
      )}
      <Opening {...props} radius={layout.radius} />
      <Text
        text={facts.mark}
        width={200}
        x={-100}
        y={-layout.mark * 0.5}
        align="center"
        fontFamily={BOARD_FONT}
        fontSize={facts.mark.length > 2 ? layout.mark * 0.8 : layout.mark}
        fontStyle="600"
        fill={facts.state === "blocked" ? palette.paperRaised : palette.ink}
      />
      <Labels
        layout={layout}
        rimmed={props.rimmed}
        operating={facts.live !== null}
        palette={palette}
      />
      {facts.live && (
        <LiveBadge
          state={facts.live.state}
          x={layout.badgeAt[0]}
          y={layout.badgeAt[1]}
          reach={layout.badge}
          palette={palette}
        />
      )}
      {facts.verdict && !facts.live && (
        <VerdictShape
          verdict={facts.verdict}
          x={layout.badgeAt[0]}
          y={layout.badgeAt[1]}
          reach={layout.badge}
          palette={palette}
        />
      )}
      {facts.lead && <LeadFlag lead={facts.lead} radius={layout.radius} palette={palette} />}
    </Group>
  );
});

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
function Opening({ facts, holds, rimmed, palette, radius }: CavityShapeProps & { radius: number }) {
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
    // Over a photo the real opening shows through.
    fill: empty ? "transparent" : rimmed ? `${palette.paper}a6` : palette.paper,
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

interface LabelsProps extends Pick<CavityShapeProps, "layout" | "rimmed" | "palette"> {
  /** What stands in the pin's place is then the chief thing. */
  operating: boolean;
}

function Labels({ layout, rimmed, operating, palette }: LabelsProps) {
  return [layout.code, layout.pin].map(
    (label) =>
      label && (
        <Text
          key={label === layout.code ? "code" : "pin"}
          x={label.x}
          y={label.y}
          text={label.text}
          fontFamily={BOARD_FONT}
          fontSize={label.size}
          fontStyle={label.style}
          fill={label === layout.code || operating ? palette.ink : palette.inkSoft}
          wrap="none"
          {...(rimmed
            ? { stroke: palette.paperRaised, strokeWidth: 4, fillAfterStrokeEnabled: true }
            : {})}
        />
      ),
  );
}

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
        fontFamily={BOARD_FONT}
        fontSize={14}
        fontStyle="600"
        fill="#ffffff"
      />
    </Group>
  );
}
