import { type WireLook, wordsForLook } from "../../../session/index.ts";
import { ColourSwatch } from "../../boards/plug/colour-swatch.tsx";
import styles from "./compare-table.module.css";

/** A wire's colour as a piece of it with its code, number and size in words beside it. */
export function LookedAt({ look }: { look: WireLook }) {
  const words = wordsForLook(look);
  return (
    <span className={styles.look}>
      <ColourSwatch colour={look.colour} />
      {words === "" ? <span className={styles.soft}>not noted</span> : <span>{words}</span>}
    </span>
  );
}
