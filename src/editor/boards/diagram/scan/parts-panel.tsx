import { CheckCheck, X } from "lucide-react";
import type { PartItem, PartsDesk } from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import styles from "./parts.module.css";
import { PartInHand } from "./parts-in-hand.tsx";
import { PartsList } from "./parts-list.tsx";
import { useParts, usePartsDesk } from "./use-parts.ts";

/** What may be parts of the picture, under the bar that had them found. */
export function PartsPanel() {
  const desk = usePartsDesk();
  return desk && <Panel desk={desk} />;
}

function Panel({ desk }: { desk: PartsDesk }) {
  const { state, items } = useParts(desk);
  if (!state.isOpen) return null;
  const sure = items.filter(({ sureness }) => sureness === "sure").length;
  const chosen = items.find(({ id }) => id === state.chosen) ?? null;
  return (
    <section className={styles.panel} data-in-hand={chosen !== null} aria-label="Parts found">
      <div className={styles.head}>
        <p className={styles.count} role="status">
          {said(items, state.like)}
        </p>
        <Button
          tone="primary"
          icon={<CheckCheck aria-hidden />}
          disabled={sure === 0}
          onClick={desk.placeSure}
        >
          {sure === 0
            ? "Place the sure ones"
            : sure === 1
              ? "Place the sure one"
              : `Place the ${sure} sure ones`}
        </Button>
        <Button
          tone="quiet"
          icon={<X aria-hidden />}
          aria-label="Put away what was found"
          onClick={desk.close}
        />
      </div>
      {chosen && <PartInHand desk={desk} item={chosen} />}
      {items.length > 0 && <PartsList desk={desk} items={items} chosen={state.chosen} />}
    </section>
  );
}

function said(items: readonly PartItem[], like: string | null): string {
  const what = like === null ? "" : ` that look like ${like}`;
  if (items.length === 0) {
    return like === null
      ? "Nothing more on the picture looks like a part."
      : `Nothing else on the picture looks like ${like}.`;
  }
  const count = (sureness: PartItem["sureness"]) =>
    items.filter((item) => item.sureness === sureness).length;
  const counts = (["sure", "likely", "maybe"] as const)
    .filter((sureness) => count(sureness) > 0)
    .map((sureness) => `${count(sureness)} ${sureness}`);
  const places = items.length === 1 ? "1 place" : `${items.length} places`;
  return `${places}${what}: ${counts.join(", ")}`;
}
