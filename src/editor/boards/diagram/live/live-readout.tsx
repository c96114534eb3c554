import { useForm } from "../../../app/use-layout.ts";
import { ChosenCard } from "../../../panels/index.ts";
import { useSelected } from "../../../session-context.tsx";
import { useBoardState } from "../board-context.tsx";
import { chosenBy } from "./live-hit.ts";
import styles from "./live-readout.module.css";

/**
 * Over the board's foot: what is under the pointer, else what is chosen and what can be done with
 * it. A phone has no room for that over its board, and tells it under it.
 */
export function LiveReadout() {
  const form = useForm();
  const asks = useSelected((state) => state.operate.leads.asks);
  const chosen = useSelected((state) => state.selection[0]);
  const hover = useBoardState((state) => state.hover);
  if (asks) return <p className={styles.asks}>Tap where the {asks} lead goes</p>;
  if (form === "phone") return null;
  const of = hover ? chosenBy(hover) : chosen;
  return (
    <div className={styles.readout}>
      <ChosenCard of={of} acts={of === chosen} />
    </div>
  );
}
