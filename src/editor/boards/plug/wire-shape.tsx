import { Group, Line } from "react-konva";
import type { Point } from "../../../base/index.ts";
import type { Colour } from "../../../job/index.ts";
import { colourBands } from "../../../standards/index.ts";

interface WireShapeProps {
  points: readonly Point[];
  colour: Colour;
  /** Pixels across the insulation. */
  width: number;
  /** Colour of the thin outline that lets white, yellow and black show on any ground. */
  outline: string;
}

/** A length of wire in its true two colours: the base, and the tracer as a thin stripe along it. */
export function WireShape({ points, colour, width, outline }: WireShapeProps) {
  const flat = points.flat();
  const { base, stripe, edge } = colourBands(colour);
  const thin = Math.max(2, width * 0.34);
  return (
    <Group>
      <Line points={flat} stroke={outline} strokeWidth={width + 3} lineJoin="round" />
      <Line points={flat} stroke={base} strokeWidth={width} lineJoin="round" />
      {edge && <Line points={flat} stroke={edge} strokeWidth={thin + 2} lineJoin="round" />}
      {stripe && <Line points={flat} stroke={stripe} strokeWidth={thin} lineJoin="round" />}
    </Group>
  );
}
