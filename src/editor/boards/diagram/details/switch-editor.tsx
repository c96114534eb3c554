import { Plus, X } from "lucide-react";
import { restPosition, springPositions } from "../../../../circuit/index.ts";
import { CONTROLS, type Job, type PartOf } from "../../../../job/index.ts";
import {
  addContact,
  addPosition,
  removeContact,
  removePosition,
  renamePosition,
  setClosedIn,
  setContactPin,
  setPartField,
  setSpring,
} from "../../../../session/index.ts";
import { WORKED_BY } from "../../../app/ask-what-works.ts";
import { CommitField } from "../../../app/commit-field.tsx";
import { Button } from "../../../app/controls/index.ts";
import { useSession } from "../../../session-context.tsx";
import { Choice } from "../../plug/fields.tsx";
import styles from "./details.module.css";

const CONTROL_WORDS: Readonly<Record<(typeof CONTROLS)[number], string>> = {
  key: "key switch",
  isolator: "battery isolator",
  "emergency-stop": "emergency stop",
  operator: "the operator's hand or foot",
  limit: "limit or position",
  pressure: "pressure",
  temperature: "temperature",
  level: "level",
  interlock: "interlock that protects a person",
};

/** Positions, what they spring back from, and which contacts are closed in which. */
export function SwitchEditor({ part }: { part: PartOf<"switch"> }) {
  const session = useSession();
  const { id, positions, contacts } = part;
  const edit = (label: string, change: (draft: Job) => void) =>
    session.edit(`${label} of ${id}`, change);
  const rest = restPosition(part) ?? "";
  const springs = springPositions(part);
  const nextName = () => {
    let number = positions.length;
    while (positions.includes(String(number))) number++;
    return String(number);
  };
  return (
    <>
      <div className={styles.worked} {...WORKED_BY}>
        <Choice
          label="Worked by"
          value={part.control}
          options={CONTROLS.map((value) => ({ value, text: CONTROL_WORDS[value] }))}
          onChange={(control) =>
            edit("Set the control", (draft) => setPartField(draft, id, "control", control))
          }
        />
      </div>
      <Choice
        label="Rests at"
        value={rest}
        options={positions.map((value) => ({ value, text: value }))}
        onChange={(next) =>
          edit("Set the rest position", (draft) => setPartField(draft, id, "rest", next))
        }
      />
      <div className={styles.wide}>
        <h4>Positions</h4>
        <ul className={styles.rows}>
          {positions.map((position) => (
            <li key={position} className={styles.row}>
              <CommitField
                aria-label={`Name of position ${position}`}
                value={position}
                onCommit={(name) =>
                  edit("Rename a position", (draft) => renamePosition(draft, id, position, name))
                }
              />
              <label className={styles.tick}>
                <input
                  type="checkbox"
                  checked={springs.includes(position)}
                  disabled={position === rest}
                  onChange={(event) =>
                    edit("Set the spring return", (draft) =>
                      setSpring(draft, id, position, event.target.checked),
                    )
                  }
                />
                springs back
              </label>
              <Button
                tone="quiet"
                icon={<X aria-hidden />}
                aria-label={`Take out position ${position}`}
                disabled={positions.length < 2}
                onClick={() =>
                  edit("Take out a position", (draft) => removePosition(draft, id, position))
                }
              />
            </li>
          ))}
        </ul>
        <Button
          icon={<Plus aria-hidden />}
          onClick={() => edit("Add a position", (draft) => addPosition(draft, id, nextName()))}
        >
          Add a position
        </Button>
      </div>
      <div className={styles.wide}>
        <h4>Contacts</h4>
        <ul className={styles.rows}>
          {contacts.map((contact, index) => {
            const name = contact.between.join("–");
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: a contact is known by its place alone
              <li key={index} className={styles.contact}>
                <span className={styles.row}>
                  {([0, 1] as const).map((end) => (
                    <CommitField
                      key={end}
                      className={styles.mark}
                      aria-label={`${end === 0 ? "First" : "Second"} pin of contact ${name}`}
                      value={contact.between[end]}
                      onCommit={(pin) =>
                        edit("Set a contact", (draft) => setContactPin(draft, id, index, end, pin))
                      }
                    />
                  ))}
                  <span className={styles.spring} />
                  <Button
                    tone="quiet"
                    icon={<X aria-hidden />}
                    aria-label={`Take out contact ${name}`}
                    onClick={() =>
                      edit("Take out a contact", (draft) => removeContact(draft, id, index))
                    }
                  />
                </span>
                <fieldset className={styles.closed}>
                  <legend>closed in</legend>
                  {positions.map((position) => (
                    <label key={position} className={styles.tick}>
                      <input
                        type="checkbox"
                        checked={contact.closedIn.includes(position)}
                        onChange={(event) =>
                          edit("Set a contact", (draft) =>
                            setClosedIn(draft, id, index, position, event.target.checked),
                          )
                        }
                      />
                      {position}
                    </label>
                  ))}
                </fieldset>
              </li>
            );
          })}
        </ul>
        <Button
          icon={<Plus aria-hidden />}
          onClick={() => edit("Add a contact", (draft) => addContact(draft, id))}
        >
          Add a contact
        </Button>
      </div>
    </>
  );
}
