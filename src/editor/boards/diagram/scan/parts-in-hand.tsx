import { ArrowLeft, ArrowRight, Check, EyeOff, TriangleAlert } from "lucide-react";
import { useEffect, useId } from "react";
import { growBox } from "../../../../base/index.ts";
import { KINDS, kindOf } from "../../../../circuit/index.ts";
import type { PartKindName } from "../../../../job/index.ts";
import type { PartItem, PartsDesk } from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useBoard } from "../board-context.tsx";
import { PartSymbol } from "../part-symbol.tsx";
import styles from "./parts.module.css";
import { bringIntoSight } from "./words-sight.ts";

interface PartInHandProps {
  desk: PartsDesk;
  item: PartItem;
}

const ALL_KINDS = Object.keys(KINDS) as PartKindName[];

/** Room about a symbol that is brought into sight, symbol units. */
const ROOM = 4;

/** One place on the picture: what it would be placed as, and what else it may be. */
export function PartInHand({ desk, item }: PartInHandProps) {
  const board = useBoard();
  const kindId = useId();
  const { id, kind, proposal, sureness, caution } = item;
  const { box, unit, others } = proposal;
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another place moves the view
  useEffect(() => bringIntoSight(board, growBox(box, ROOM * unit)), [board, id]);
  const looksLike: readonly PartKindName[] = [proposal.kind, ...others.map((one) => one.kind)];
  const rest = ALL_KINDS.filter((one) => !looksLike.includes(one));
  return (
    <div className={styles.hand}>
      <div className={styles.what}>
        <PartSymbol kind={kind} size={44} />
        <label className={styles.label} htmlFor={kindId}>
          Place as
        </label>
        <select
          id={kindId}
          className={styles.kind}
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
        <span className={styles.sureness}>{sureness}</span>
      </div>
      {caution !== null && (
        <p className={styles.caution}>
          <TriangleAlert aria-hidden />
          {caution}
        </p>
      )}
      <div className={styles.actions}>
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
        <Button icon={<EyeOff aria-hidden />} onClick={() => desk.leave(id)}>
          Leave
        </Button>
        <Button tone="primary" icon={<Check aria-hidden />} onClick={() => desk.place(id)}>
          Place
        </Button>
      </div>
    </div>
  );
}
