import { useId } from "react";
import { ROLE_NAMES, type RoleName } from "../../../job/index.ts";
import { wordsForRole } from "../../../roles/index.ts";
import { teachWord } from "../../../session/index.ts";
import { useSession } from "../../session-context.tsx";
import styles from "./words.module.css";

/** A word taught from the circuit could never contradict it. */
const LEGEND = "Go by the maker's legend, not by what the circuit shows.";

const ROLES = ROLE_NAMES.map((role) => (
  <option key={role} value={role}>
    {wordsForRole(role)}
  </option>
));

/** Asks what a printed word means; choosing a role teaches it, one edit. */
export function RolePick({ printed, short = false }: { printed: string; short?: boolean }) {
  const session = useSession();
  const id = useId();
  const pick = (value: string) => {
    const role = ROLE_NAMES.find((name: RoleName) => name === value);
    if (role) teachWord(session, printed, role);
  };
  return (
    <div className={styles.question} data-short={short}>
      <label htmlFor={id} className={short ? "visually-hidden" : undefined}>
        What does “{printed.trim()}” mean here?
      </label>
      <select
        id={id}
        className={styles.pick}
        value=""
        onChange={(event) => pick(event.target.value)}
      >
        <option value="">{short ? "means …?" : "choose what it means"}</option>
        {short ? <optgroup label={LEGEND}>{ROLES}</optgroup> : ROLES}
      </select>
      {!short && <p className={styles.legend}>{LEGEND}</p>}
    </div>
  );
}
