import { Circle, Group, Line, RegularPolygon } from "react-konva";
import type { Verdict } from "../../../roles/index.ts";
import type { Palette } from "../../theme/theme.tsx";

interface VerdictShapeProps {
  verdict: Verdict;
  x: number;
  y: number;
  /** Half the badge's width, pixels. */
  reach: number;
  palette: Palette;
}

/** Each verdict has an outline, a sign and a colour of its own, so that any one of them will do. */
export function VerdictShape({ verdict, x, y, reach, palette }: VerdictShapeProps) {
  const sign = { stroke: palette.paperRaised, strokeWidth: reach * 0.3, lineCap: "round" } as const;
  const u = reach * 0.42;
  return (
    <Group x={x} y={y}>
      {verdict === "contradicted" && (
        <>
          <RegularPolygon
            sides={8}
            radius={reach * 1.14}
            rotation={22.5}
            fill={palette.contradiction}
            stroke={palette.paperRaised}
            strokeWidth={1.5}
          />
          <Line points={[-u, -u, u, u]} {...sign} />
          <Line points={[-u, u, u, -u]} {...sign} />
        </>
      )}
      {verdict === "agrees" && (
        <>
          <Circle
            radius={reach}
            fill={palette.agrees}
            stroke={palette.paperRaised}
            strokeWidth={1.5}
          />
          <Line points={[-u, u * 0.1, -u * 0.2, u * 0.85, u, -u * 0.8]} {...sign} />
        </>
      )}
      {verdict === "undecided" && (
        <>
          <RegularPolygon
            sides={4}
            radius={reach * 1.25}
            fill={palette.warning}
            stroke={palette.paperRaised}
            strokeWidth={1.5}
          />
          <QuestionMark unit={u} stroke={palette.paperRaised} width={reach * 0.26} />
        </>
      )}
      {verdict === "unproven" && (
        <>
          <Circle
            radius={reach * 0.85}
            fill={palette.paperRaised}
            stroke={palette.inkSoft}
            strokeWidth={1.5}
          />
          <Circle radius={reach * 0.28} fill={palette.inkSoft} />
        </>
      )}
    </Group>
  );
}

/** Drawn, because a font's glyph sits differently on every device. */
function QuestionMark({ unit, stroke, width }: { unit: number; stroke: string; width: number }) {
  const hook = [-0.75, -0.75, -0.3, -1.3, 0.45, -1.25, 0.75, -0.65, 0.3, -0.05, 0, 0.45];
  return (
    <>
      <Line
        points={hook.map((value) => value * unit)}
        tension={0.35}
        stroke={stroke}
        strokeWidth={width}
        lineCap="round"
        lineJoin="round"
      />
      <Circle y={1.25 * unit} radius={width * 0.62} fill={stroke} />
    </>
  );
}
