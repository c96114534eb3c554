import { Circle, Group, Line } from "react-konva";
import type { LineState, PointState } from "../../../circuit/index.ts";
import { LINE_WORDS, voltsWords } from "../../../session/index.ts";
import type { Palette } from "../../theme/theme.tsx";

interface LiveBadgeProps {
  state: LineState;
  x: number;
  y: number;
  /** Half the badge's width, pixels. */
  reach: number;
  palette: Palette;
}

/**
 * What a cavity carries now, as an ink mark of its own shape: an arrow up for what is live, the
 * earth bars for ground, each hollow or cut where only a load ties it; a broken ring for floating.
 */
export function LiveBadge({ state, x, y, reach, palette }: LiveBadgeProps) {
  const ink = { stroke: palette.ink, strokeWidth: reach * 0.26, lineCap: "round" } as const;
  const disc = { fill: palette.paperRaised, stroke: palette.ink, strokeWidth: 1.5 };
  const u = reach * 0.55;
  const arrow = [-u, u * 0.75, 0, -u, u, u * 0.75];
  const bars = (widths: readonly number[]) =>
    widths.map((half, index) => (
      <Line
        key={half}
        points={[-half * u, (index - 1) * u * 0.75, half * u, (index - 1) * u * 0.75]}
        {...ink}
      />
    ));
  return (
    <Group x={x} y={y}>
      {state === "unknown" ? (
        <>
          <Line
            points={[0, -reach * 1.3, reach * 1.3, 0, 0, reach * 1.3, -reach * 1.3, 0]}
            closed
            {...disc}
          />
          <Line points={[-u * 0.6, -u * 0.5, 0, -u, u * 0.6, -u * 0.4, 0, u * 0.2]} {...ink} />
          <Circle y={u * 0.95} radius={reach * 0.15} fill={palette.ink} />
        </>
      ) : state === "floating" ? (
        <Circle radius={reach * 0.9} {...disc} dash={[reach * 0.35, reach * 0.4]} />
      ) : (
        <Circle
          radius={reach * 1.1}
          {...disc}
          {...(state === "live" ? { fill: palette.ink } : {})}
        />
      )}
      {state === "live" && <Line points={arrow} closed fill={palette.paperRaised} />}
      {state === "live-through-load" && <Line points={arrow} closed {...ink} />}
      {state === "between" && (
        <>
          <Line points={[-u, u * 0.9, u, u * 0.9]} {...ink} />
          <Line points={[-u * 0.8, u * 0.2, 0, -u, u * 0.8, u * 0.2]} {...ink} />
        </>
      )}
      {state === "ground" && bars([1.05, 0.7, 0.35])}
      {state === "ground-through-load" && bars([1.05, 0.35])}
    </Group>
  );
}

/** The few words that fit beside a cavity. */
export function liveTag({ state, volts }: PointState): string {
  if (state === "unknown") return "?";
  return volts === null || state === "floating" ? LINE_WORDS[state] : voltsWords(volts);
}
