import { Plus, X } from "lucide-react";
import { useState } from "react";
import type { PartOf } from "../../../../job/index.ts";
import {
  addInlinePin,
  nextMark,
  removeInlinePin,
  renamePin,
  whyNotPin,
} from "../../../../session/index.ts";
import { CommitField } from "../../../app/commit-field.tsx";
import { Button } from "../../../app/controls/index.ts";
import { useSession } from "../../../session-context.tsx";
import styles from "./details.module.css";

/** The pins that an inline plug passes through. */
export function InlineEditor({ part }: { part: PartOf<"inline"> }) {
  const session = useSession();
  const [wrong, setWrong] = useState<string | null>(null);
  const { id, pins } = part;
  const rename = (old: string, mark: string) => {
    const problem = whyNotPin(part, old, mark);
    setWrong(problem);
    if (!problem) session.edit(`Rename pin ${old}`, (draft) => renamePin(draft, id, old, mark));
  };
  return (
    <div className={styles.wide}>
      <h4>Pins</h4>
      <ul className={styles.rows}>
        {pins.map((pin) => (
          <li key={pin.id} className={styles.row}>
            <CommitField
              className={styles.mark}
              aria-label={`Mark of pin ${pin.id}`}
              value={pin.id}
              onCommit={(mark) => rename(pin.id, mark)}
            />
            <Button
              tone="quiet"
              icon={<X aria-hidden />}
              aria-label={`Take out pin ${pin.id}`}
              disabled={pins.length < 2}
              onClick={() =>
                session.edit(`Take out pin ${pin.id} of ${id}`, (draft) =>
                  removeInlinePin(draft, id, pin.id),
                )
              }
            />
          </li>
        ))}
      </ul>
      {wrong && (
        <p className={styles.wrong} role="alert">
          {wrong}
        </p>
      )}
      <Button
        icon={<Plus aria-hidden />}
        onClick={() =>
          session.edit(`Add a pin to ${id}`, (draft) =>
            addInlinePin(draft, id, nextMark(pins.map((pin) => pin.id))),
          )
        }
      >
        Add a pin
      </Button>
    </div>
  );
}
