import { kindOf, type Stroke } from "../../../circuit/index.ts";
import type { Part, PartKindName } from "../../../job/index.ts";
import { shapeOf } from "../../../session/index.ts";

const samples = new Map<PartKindName, Part>();

function sampleOf(kind: PartKindName): Part {
  const known = samples.get(kind);
  if (known) return known;
  const sample = {
    ...kindOf(kind).defaults(24),
    ...(kind === "module" ? { pins: [{ id: "1" }, { id: "2" }, { id: "3" }, { id: "4" }] } : {}),
    id: "",
    kind,
    sheet: "",
    at: [0, 0],
    turn: 0,
    unit: 1,
  } as unknown as Part;
  samples.set(kind, sample);
  return sample;
}

/** The symbol of a kind as a small drawing; the word beside it names it. */
export function PartSymbol({ kind, size = 40 }: { kind: PartKindName; size?: number }) {
  const { strokes, local } = shapeOf(sampleOf(kind));
  const width = Math.max(4, local.right - local.left) + 1;
  const height = Math.max(4, local.bottom - local.top) + 1;
  const box = [
    (local.left + local.right) / 2 - width / 2,
    (local.top + local.bottom) / 2 - height / 2,
    width,
    height,
  ];
  return (
    <svg
      width={size}
      height={size}
      viewBox={box.join(" ")}
      aria-hidden="true"
      fill="none"
      stroke="currentColor"
      strokeWidth={(Math.max(width, height) / size) * 1.6}
      strokeLinecap="round"
      strokeLinejoin="round"
    >
      {strokes.map((stroke, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: strokes have no name and never change places
        <StrokeShape key={index} stroke={stroke} />
      ))}
    </svg>
  );
}

function StrokeShape({ stroke }: { stroke: Stroke }) {
  switch (stroke.draw) {
    case "line": {
      const points = stroke.points.map((point) => point.join(",")).join(" ");
      const fill = stroke.filled ? "currentColor" : "none";
      return stroke.closed || stroke.filled ? (
        <polygon points={points} fill={fill} />
      ) : (
        <polyline points={points} strokeDasharray={stroke.dashed ? "0.5 0.4" : undefined} />
      );
    }
    case "circle":
      return (
        <circle
          cx={stroke.at[0]}
          cy={stroke.at[1]}
          r={stroke.radius}
          fill={stroke.filled ? "currentColor" : "none"}
        />
      );
    case "arc": {
      const at = (degrees: number) => {
        const angle = (degrees * Math.PI) / 180;
        const x = stroke.at[0] + stroke.radius * Math.cos(angle);
        const y = stroke.at[1] + stroke.radius * Math.sin(angle);
        return `${x} ${y}`;
      };
      const large = (((stroke.to - stroke.from) % 360) + 360) % 360 > 180 ? 1 : 0;
      const { radius } = stroke;
      return <path d={`M${at(stroke.from)}A${radius} ${radius} 0 ${large} 1 ${at(stroke.to)}`} />;
    }
    case "text":
      return null;
  }
}
