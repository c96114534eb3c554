import { ArrowLeft, ArrowRight, Check, EyeOff, TriangleAlert, X } from "lucide-react";
import { useEffect } from "react";
import { growBox } from "../../../../base/index.ts";
import { KINDS, kindOf } from "../../../../circuit/index.ts";
import type { PartKindName } from "../../../../job/index.ts";
import type { PartItem, PartsDesk, Sureness } from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useBoard } from "../board-context.tsx";
import { bringIntoSight } from "./bring-into-sight.ts";
import styles from "./parts.module.css";

interface PartInHandProps {
  desk: PartsDesk;
  item: PartItem;
}

const ALL_KINDS = Object.keys(KINDS) as PartKindName[];

/** What a word of sureness means. */
const SAYS: Readonly<Record<Sureness, string>> = {
  sure: "Sure.",
  likely: "Likely: look at it first.",
  maybe: "Maybe: more often wrong than right.",
};

/** Milliseconds after which the board has its size again. */
const SETTLED = 80;

/** Room about a symbol that is brought into sight, symbol units. */
const ROOM = 4;

/** One place on the picture: what it would be placed as, and what else it may be. */
export function PartInHand({ desk, item }: PartInHandProps) {
  const board = useBoard();
  const { id, kind, proposal, sureness, caution } = item;
  const { box, unit, others } = proposal;
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another place moves the view
  useEffect(() => {
    // What opens for it above the picture takes some of the picture's room first.
    const soon = setTimeout(() => bringIntoSight(board, growBox(box, ROOM * unit)), SETTLED);
    return () => clearTimeout(soon);
  }, [board, id]);
  const looksLike: readonly PartKindName[] = [proposal.kind, ...others.map((one) => one.kind)];
  const rest = ALL_KINDS.filter((one) => !looksLike.includes(one));
  return (
    <div className={styles.hand}>
      <div className={styles.what}>
        <Button
          icon={<ArrowLeft aria-hidden />}
          aria-label="Place before"
          onClick={() => desk.step(-1)}
        />
        <Button
          icon={<ArrowRight aria-hidden />}
          aria-label="Next place"
          onClick={() => desk.step(1)}
        />
        <select
          className={styles.kind}
          aria-label="Place as"
          value={kind}
          onChange={(event) => desk.say(id, event.target.value as PartKindName)}
        >
          <optgroup label="Looks like">
            {looksLike.map((one) => (
              <option key={one} value={one}>
                {kindOf(one).title}
              </option>
            ))}
          </optgroup>
          <optgroup label="Another kind">
            {rest.map((one) => (
              <option key={one} value={one}>
                {kindOf(one).title}
              </option>
            ))}
          </optgroup>
        </select>
        <Button icon={<EyeOff aria-hidden />} onClick={() => desk.leave(id)}>
          Leave
        </Button>
        <Button tone="primary" icon={<Check aria-hidden />} onClick={() => desk.place(id)}>
          Place
        </Button>
        <span className={styles.back}>
          <Button
            tone="quiet"
            icon={<X aria-hidden />}
            aria-label="Back to all that was found"
            onClick={() => desk.choose(null)}
          />
        </span>
      </div>
      <p className={styles.says}>
        {caution !== null && <TriangleAlert aria-hidden />}
        {caution ?? SAYS[sureness]}
      </p>
    </div>
  );
}
