import { Popover } from "radix-ui";
import { Fragment } from "react";
import type { PinRow } from "../../session/index.ts";
import { known } from "../../sheet/index.ts";
import { formatColour, nameColour } from "../../standards/index.ts";
import { CavityDetails, ColourSwatch } from "../boards/plug/index.ts";
import styles from "./pin-table.module.css";

/** The wire as this machine has it, else as drawn; a tap opens what is known of it. */
export function WireCell({ row }: { row: PinRow }) {
  const { colour, number, mm2 } = row;
  const shown = known(colour);
  const codes = [shown ? formatColour(shown) : "", known(number) ?? ""].filter(Boolean);
  const words = codes.join(" ");
  const size = known(mm2);
  const differs = row.colourDiffers || row.numberDiffers;
  const drawn = [
    row.colourDiffers && colour.onDiagram ? formatColour(colour.onDiagram) : "",
    row.numberDiffers ? (number.onDiagram ?? "") : "",
  ];
  const isOwn = colour.onMachine !== null || number.onMachine !== null;
  const under = differs
    ? `drawn as ${drawn.filter(Boolean).join(" ")}`
    : [size === null ? "" : `${size} mm²`, words !== "" && !isOwn ? "as drawn" : ""]
        .filter(Boolean)
        .join(", ");
  const content = (
    <>
      <ColourSwatch colour={shown} />
      <span className={styles.wireWords}>
        <span>
          {codes.length === 0 && <span className={styles.soft}>not known</span>}
          {codes.map((code, index) => (
            <Fragment key={code}>
              {index > 0 && " "}
              <span className={styles.code}>{code}</span>
            </Fragment>
          ))}
        </span>
        {under !== "" && (
          <span className={styles.under} data-differs={differs}>
            {differs && "! "}
            {under}
          </span>
        )}
      </span>
    </>
  );
  if (row.state === "blocked" && words === "") return <span className={styles.soft}>–</span>;
  if (row.cavity === null) return <span className={styles.wire}>{content}</span>;
  const spoken = shown ? nameColour(shown) : "colour not known";
  return (
    <Popover.Root>
      <Popover.Trigger
        className={styles.wire}
        aria-label={`Wire in cavity ${row.mark}: ${[spoken, known(number) ?? "", under].filter(Boolean).join(", ")}. Change it`}
      >
        {content}
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Content
          data-portal
          className={styles.popover}
          collisionPadding={8}
          aria-label={`Wire in cavity ${row.mark}`}
        >
          <CavityDetails cavity={row.cavity} />
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  );
}
