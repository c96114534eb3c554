import { type PinRef, splitRef } from "../../../job/index.ts";
import { printedWord, ROLE_IN_WORDS, repeatsMark, taughtRole } from "../../../roles/index.ts";
import { drawnOf, forgetWord, pinsWithWord } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { RolePick } from "./role-pick.tsx";
import styles from "./words.module.css";

/** For a word that no table knows: asks what it means, or says what was taught. */
export function WordMeaning({ pin }: { pin: PinRef }) {
  const session = useSession();
  const job = useSelected(drawnOf);
  const { owner, name } = splitRef(pin);
  const module = job.diagram.parts.find((part) => part.id === owner);
  const own = module?.kind === "module" ? module.pins.find((one) => one.id === name) : undefined;
  const printed = own?.printed?.trim() ?? "";
  if (!own || printed === "" || repeatsMark(own)) return null;
  const role = taughtRole(printed, job.words);
  if (role === null && printedWord(own, job.words).meanings.length > 0) return null;
  const count = pinsWithWord(job, printed);
  return (
    <section className={styles.meaning} aria-label={`The word “${printed}”`}>
      {role === null ? (
        <>
          <RolePick printed={printed} />
          <p className={styles.hint}>
            {`No word that is known. What you choose counts in this job for ${pinsInWords(count)}; undo takes it back.`}
          </p>
        </>
      ) : (
        <div className={styles.taught}>
          <span>
            “{printed}” means <strong>{ROLE_IN_WORDS[role]}</strong> in this job: you said so.
          </span>
          <Button onClick={() => forgetWord(session, printed)}>Forget it</Button>
        </div>
      )}
    </section>
  );
}

const pinsInWords = (count: number) =>
  count === 1 ? "this pin" : `all ${count} pins that have it`;
