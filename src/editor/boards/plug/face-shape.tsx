import { memo } from "react";
import { Circle, Group, Image, Line, Rect } from "react-konva";
import type { PlugKey, PlugOutline } from "../../../job/index.ts";
import type { FaceView } from "../../../plug/index.ts";
import type { Palette } from "../../theme/theme.tsx";

interface FaceShapeProps {
  view: FaceView;
  picture: ImageBitmap | null;
  /** Pixels per millimetre: keeps lines equally thin at every zoom. */
  scale: number;
  palette: Palette;
}

/** Everything of the face that lies behind the cavities, in millimetres. */
export const FaceShape = memo(function FaceShape(props: FaceShapeProps) {
  const { view, picture, scale, palette } = props;
  const line = { stroke: palette.ink, strokeWidth: 2 / scale };
  return (
    <Group>
      {view.photo && picture && (
        <Image
          image={picture}
          x={view.photo.at[0] + (view.mirrored ? view.photo.width : 0)}
          y={view.photo.at[1]}
          width={view.photo.width}
          height={view.photo.height}
          scaleX={view.mirrored ? -1 : 1}
          opacity={0.75}
        />
      )}
      {view.keys.map((key) =>
        key.kind === "latch" ? (
          <LatchShape key={`latch ${key.at}`} latch={key} palette={palette} line={line} />
        ) : null,
      )}
      {view.outline && (
        <OutlineShape
          outline={view.outline}
          fill={view.photo ? undefined : palette.paperRaised}
          line={line}
        />
      )}
      {view.keys.map((key) =>
        key.kind === "key" ? (
          <Rect key={`key ${key.at}`} {...boxOf(key)} fill={palette.ink} cornerRadius={0.2} />
        ) : null,
      )}
    </Group>
  );
});

interface LineStyle {
  stroke: string;
  strokeWidth: number;
}

function OutlineShape({
  outline,
  fill,
  line,
}: {
  outline: PlugOutline;
  fill: string | undefined;
  line: LineStyle;
}) {
  switch (outline.shape) {
    case "rectangle":
      return (
        <Rect
          x={outline.at[0]}
          y={outline.at[1]}
          width={outline.width}
          height={outline.height}
          cornerRadius={outline.radius ?? 0}
          fill={fill}
          {...line}
        />
      );
    case "circle":
      return (
        <Circle x={outline.at[0]} y={outline.at[1]} radius={outline.radius} fill={fill} {...line} />
      );
    case "polygon":
      return <Line points={outline.points.flat()} closed fill={fill} {...line} />;
  }
}

/** A tab with a bar across, so that nobody takes it for a key. */
function LatchShape({
  latch,
  palette,
  line,
}: {
  latch: PlugKey;
  palette: Palette;
  line: LineStyle;
}) {
  return (
    <Group x={latch.at[0]} y={latch.at[1]} rotation={latch.turn ?? 0}>
      <Rect
        x={-latch.width / 2}
        y={-latch.height / 2}
        width={latch.width}
        height={latch.height}
        cornerRadius={latch.height / 4}
        fill={palette.rule}
        {...line}
      />
      <Line points={[-latch.width / 4, 0, latch.width / 4, 0]} {...line} />
    </Group>
  );
}

const boxOf = (key: PlugKey) => ({
  x: key.at[0],
  y: key.at[1],
  width: key.width,
  height: key.height,
  offsetX: key.width / 2,
  offsetY: key.height / 2,
  rotation: key.turn ?? 0,
});
