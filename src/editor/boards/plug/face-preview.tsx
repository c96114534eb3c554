import type { Plug } from "../../../job/index.ts";
import { type Side, spacingOf, viewFrom } from "../../../plug/index.ts";
import styles from "./face-preview.module.css";

interface FacePreviewProps {
  plug: Pick<Plug, "cavities" | "outline" | "keys" | "side">;
  side: Side;
  label: string;
}

/** A small still picture of a face, for choosing an arrangement by its look. */
export function FacePreview({ plug, side, label }: FacePreviewProps) {
  const view = viewFrom({ id: "preview", ...plug }, side);
  const spacing = spacingOf(view.cavities);
  const { left, top, right, bottom } = view.bounds;
  const pad = spacing * 0.2;
  const stroke = Math.max(right - left, bottom - top) / 160;
  return (
    <svg
      className={styles.preview}
      role="img"
      aria-label={label}
      viewBox={`${left - pad} ${top - pad} ${right - left + 2 * pad} ${bottom - top + 2 * pad}`}
      strokeWidth={stroke}
    >
      {view.keys.map((key) =>
        key.kind === "latch" ? <KeyBox key={`latch ${key.at}`} drawn={key} /> : null,
      )}
      {view.outline?.shape === "rectangle" && (
        <rect
          className={styles.housing}
          x={view.outline.at[0]}
          y={view.outline.at[1]}
          width={view.outline.width}
          height={view.outline.height}
          rx={view.outline.radius ?? 0}
        />
      )}
      {view.outline?.shape === "circle" && (
        <circle
          className={styles.housing}
          cx={view.outline.at[0]}
          cy={view.outline.at[1]}
          r={view.outline.radius}
        />
      )}
      {view.keys.map((key) =>
        key.kind === "key" ? <KeyBox key={`key ${key.at}`} drawn={key} /> : null,
      )}
      {view.cavities.map(({ index, at, mark, cavity }) => (
        <g key={index} transform={`translate(${at[0]} ${at[1]})`}>
          {cavity.opening && cavity.opening !== "round" ? (
            <Blade upright={cavity.opening === "blade-upright"} spacing={spacing} />
          ) : (
            <circle className={styles.cavity} r={spacing * 0.36} />
          )}
          <text
            className={styles.mark}
            fontSize={spacing * (mark.length > 2 ? 0.26 : 0.38)}
            textAnchor="middle"
            dominantBaseline="central"
          >
            {mark}
          </text>
        </g>
      ))}
    </svg>
  );
}

function Blade({ upright, spacing }: { upright: boolean; spacing: number }) {
  const long = spacing * 0.76;
  const short = spacing * 0.5;
  const [width, height] = upright ? [short, long] : [long, short];
  return (
    <rect
      className={styles.cavity}
      x={-width / 2}
      y={-height / 2}
      width={width}
      height={height}
      rx={short * 0.15}
    />
  );
}

function KeyBox({ drawn }: { drawn: NonNullable<Plug["keys"]>[number] }) {
  const [x, y] = drawn.at;
  return (
    <rect
      className={drawn.kind === "latch" ? styles.latch : styles.key}
      x={x - drawn.width / 2}
      y={y - drawn.height / 2}
      width={drawn.width}
      height={drawn.height}
      rx={drawn.height / 5}
      transform={`rotate(${drawn.turn ?? 0} ${x} ${y})`}
    />
  );
}
