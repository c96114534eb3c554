import { restPosition } from "../../../circuit/index.ts";
import type { PartOf } from "../../../job/index.ts";
import { doStep, isSpring, positionOf } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { Segments } from "../segments.tsx";
import styles from "./controls.module.css";

/** A switch with all its positions. What a spring would bring back stays here until it is let go. */
export function SwitchControl({ part, bare }: { part: PartOf<"switch">; bare?: boolean }) {
  const session = useSession();
  const operate = useSelected((state) => state.operate);
  const position = positionOf(part, operate);
  const rest = restPosition(part);
  return (
    <div className={styles.switch}>
      <Segments
        label={part.label ? `${part.id} ${part.label}` : part.id}
        value={position}
        {...(rest === undefined ? {} : { rest })}
        bare={bare ?? false}
        options={part.positions.map((one) => ({
          value: one,
          text: isSpring(part, one) ? `hold ${one}` : one,
        }))}
        onChange={(to) => doStep(session, { do: "turn", switch: part.id, position: to })}
      />
      {isSpring(part, position) && (
        <Button onClick={() => doStep(session, { do: "release", switch: part.id })}>
          Let go of {part.id}
        </Button>
      )}
    </div>
  );
}
