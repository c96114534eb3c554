import { Plus, X } from "lucide-react";
import { type KeyboardEvent, useEffect, useRef, useState } from "react";
import { type Job, type PartOf, pinRef } from "../../../../job/index.ts";
import {
  addModulePin,
  type PinUse,
  pinUse,
  removeModulePin,
  setPinUse,
  setTraced,
} from "../../../../session/index.ts";
import { CommitField } from "../../../app/commit-field.tsx";
import { Button } from "../../../app/controls/index.ts";
import { TaughtWords, WordMeaning } from "../../../panels/words/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import { writeWords } from "../words.ts";
import styles from "./details.module.css";
import { ModuleBehaviour } from "./module-behaviour.tsx";
import { ModulePower, ModuleSources } from "./module-power.tsx";

type Module = PartOf<"module">;

/** The pins of a module as a table: mark and printed word, typed one after another. */
export function ModuleEditor({ part }: { part: Module }) {
  const session = useSession();
  const chief = useSelected((state) => state.selection[0]);
  const body = useRef<HTMLTableSectionElement>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const [fresh, setFresh] = useState<string | null>(null);
  const { id, pins } = part;
  const chosen = pins.map((pin) => pinRef(id, pin.id)).find((ref) => ref === chief);
  const edit = (label: string, change: (draft: Job) => void) => session.edit(label, change);
  useEffect(() => {
    if (fresh === null) return;
    const fields = body.current?.querySelectorAll<HTMLInputElement>("input[data-pin]") ?? [];
    [...fields].find((field) => field.dataset.pin === fresh)?.focus();
    setFresh(null);
  }, [fresh]);
  const add = () => {
    let pin: string | null = null;
    edit(`Add a pin to ${id}`, (draft) => {
      pin = addModulePin(draft, id, null);
    });
    setFresh(pin);
  };
  /** Enter goes to the same word of the next pin; after the last one it adds a pin. */
  const goOn = (event: KeyboardEvent) => {
    const field = event.target;
    if (event.key !== "Enter" || !(field instanceof HTMLInputElement)) return;
    const column = field.dataset.pin === undefined ? "input:not([data-pin])" : "input[data-pin]";
    const fields = [...(body.current?.querySelectorAll<HTMLInputElement>(column) ?? [])];
    const next = fields[fields.indexOf(field) + 1];
    if (next) {
      next.focus();
      next.select();
    } else if (field.dataset.pin !== undefined) add();
  };
  return (
    <div className={styles.wide}>
      <h4>Pins</h4>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Mark</th>
            <th scope="col">Printed word</th>
            <th scope="col">Power</th>
            <th>
              <span className="visually-hidden">Take out</span>
            </th>
          </tr>
        </thead>
        <tbody ref={body} onKeyDown={goOn}>
          {pins.map((pin) => {
            const ref = pinRef(id, pin.id);
            return (
              <tr key={pin.id} aria-selected={chief === ref}>
                <td>
                  <CommitField
                    className={styles.mark}
                    aria-label={`Mark of pin ${pin.id}`}
                    value={pin.id}
                    onCommit={(mark) => setWrong(writeWords(session, ref, mark, pin.printed ?? ""))}
                  />
                </td>
                <td>
                  <CommitField
                    data-pin={pin.id}
                    aria-label={`Printed word of pin ${pin.id}`}
                    value={pin.printed ?? ""}
                    mayBeEmpty
                    spellCheck={false}
                    live
                    onCommit={(word, merge) =>
                      setWrong(writeWords(session, ref, pin.id, word, merge))
                    }
                  />
                </td>
                <td>
                  <select
                    aria-label={`Whether pin ${pin.id} feeds the module`}
                    value={pinUse(part, pin.id)}
                    onChange={(event) =>
                      edit(`Set the feeds of ${id}`, (draft) =>
                        setPinUse(draft, id, pin.id, event.target.value as PinUse),
                      )
                    }
                  >
                    <option value="none">–</option>
                    <option value="supply">feed</option>
                    <option value="ground">ground</option>
                  </select>
                </td>
                <td>
                  <Button
                    tone="quiet"
                    icon={<X aria-hidden />}
                    aria-label={`Take out pin ${pin.id}`}
                    onClick={() =>
                      edit(`Take out pin ${pin.id} of ${id}`, (draft) =>
                        removeModulePin(draft, id, pin.id),
                      )
                    }
                  />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {wrong && (
        <p className={styles.wrong} role="alert">
          {wrong}
        </p>
      )}
      <Button icon={<Plus aria-hidden />} onClick={add}>
        Add a pin
      </Button>
      <label className={styles.tick}>
        <input
          type="checkbox"
          checked={!part.untraced}
          onChange={(event) => {
            const isTraced = event.target.checked;
            edit(
              isTraced ? `Say that ${id} is traced` : `Say that ${id} is not traced yet`,
              (draft) => setTraced(draft, id, isTraced),
            );
          }}
        />
        Every line of it is traced: a pin without one is not used
      </label>
      {chosen && <WordMeaning key={chosen} pin={chosen} />}
      <TaughtWords />
      <ModulePower part={part} />
      <ModuleSources part={part} />
      <ModuleBehaviour part={part} />
    </div>
  );
}
