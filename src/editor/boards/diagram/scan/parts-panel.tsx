import { CheckCheck, Dot, RotateCcw, X } from "lucide-react";
import { useRef } from "react";
import type { PartItem, PartsDesk } from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import styles from "./parts.module.css";
import { PartInHand } from "./parts-in-hand.tsx";
import { PartsList } from "./parts-list.tsx";
import { useKeptFocus } from "./use-kept-focus.ts";
import { useParts, usePartsDesk } from "./use-parts.ts";

/** What may be parts of the picture, under the bar that had them found. */
export function PartsPanel() {
  const desk = usePartsDesk();
  return desk && <Panel desk={desk} />;
}

function Panel({ desk }: { desk: PartsDesk }) {
  const { isOpen } = useParts(desk).state;
  return isOpen && <Found desk={desk} />;
}

function Found({ desk }: { desk: PartsDesk }) {
  const { state, items, joints } = useParts(desk);
  const panel = useRef<HTMLElement>(null);
  const keepFocus = useKeptFocus(panel);
  const sure = items.filter(({ sureness }) => sureness === "sure").length;
  const sureJoints = joints.filter(({ sureness }) => sureness === "sure").length;
  const chosen = [...items, ...joints].find(({ id }) => id === state.chosen) ?? null;
  return (
    <section
      ref={panel}
      className={styles.panel}
      data-in-hand={chosen !== null}
      aria-label="Parts found"
      {...keepFocus}
    >
      <div className={styles.head}>
        <p className={styles.count} role="status">
          {items.length === 0 && sureJoints > 0 ? "No part" : said(items, state.like)}
          {sureJoints > 0 && <span className={styles.joints}>, {jointsSaid(sureJoints)}</span>}
        </p>
        {(state.left.size > 0 || state.like !== null) && (
          <Button
            tone="quiet"
            icon={<RotateCcw aria-hidden />}
            aria-label="Look again"
            title="Looks over the whole picture again: what you left is proposed again, too."
            onClick={() => void desk.findAgain()}
          />
        )}
        {sure > 0 && (
          <Button tone="primary" icon={<CheckCheck aria-hidden />} onClick={desk.placeSure}>
            {sure === 1 ? "Place the sure one" : `Place the ${sure} sure ones`}
          </Button>
        )}
        <Button
          tone="quiet"
          icon={<X aria-hidden />}
          aria-label="Put away what was found"
          data-rest
          onClick={desk.close}
        />
      </div>
      {chosen && <PartInHand desk={desk} item={chosen} />}
      <div className={styles.strip}>
        {items.length > 0 && <PartsList desk={desk} items={items} chosen={state.chosen} />}
        {sureJoints > 0 && (
          <Button
            className={styles["by-hand"]}
            icon={<Dot aria-hidden />}
            title="Tracing makes these splices by itself: place them only where you wire by hand."
            onClick={desk.placeJoints}
          >
            {sureJoints === 1 ? "Place the joint" : `Place the ${sureJoints} joints`}
          </Button>
        )}
      </div>
    </section>
  );
}

const jointsSaid = (count: number) => (count === 1 ? "1 joint" : `${count} joints`);

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
