import { useState } from "react";
import { type PinRef, splitRef } from "../../../job/index.ts";
import {
  type Meaning,
  printedWord,
  ROLE_IN_WORDS,
  repeatsMark,
  rolesInWords,
  taughtRole,
} from "../../../roles/index.ts";
import { drawnOf, forgetWord, pinsWithWord } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { RolePick } from "./role-pick.tsx";
import styles from "./words.module.css";

/**
 * What a pin's printed word is taken for, or what was taught; asks about one that nobody knows, and lets
 * any other be taught another meaning.
 */
export function WordMeaning({ pin }: { pin: PinRef }) {
  const session = useSession();
  const job = useSelected(drawnOf);
  const { owner, name } = splitRef(pin);
  const module = job.diagram.parts.find((part) => part.id === owner);
  const own = module?.kind === "module" ? module.pins.find((one) => one.id === name) : undefined;
  const printed = own?.printed?.trim() ?? "";
  if (!own || printed === "" || repeatsMark(own)) return null;
  const role = taughtRole(printed, job.words);
  const { meanings } = printedWord(own, job.words);
  const count = pinsWithWord(job, printed);
  const counts = `What you choose counts in this job for ${pinsInWords(count)}; undo takes it back.`;
  return (
    <section className={styles.meaning} aria-label={`The word “${printed}”`}>
      {role !== null ? (
        <>
          <div className={styles.taught}>
            <span>
              “{printed}” means <strong>{ROLE_IN_WORDS[role]}</strong> in this job: you said so.
            </span>
            <Button onClick={() => forgetWord(session, printed)}>Forget it</Button>
          </div>
          <OtherMeaning key={role} printed={printed} hint={counts} />
        </>
      ) : meanings.length > 0 ? (
        <>
          <span>
            “{printed}” is read as <strong>{readAs(meanings)}</strong>.
          </span>
          <OtherMeaning printed={printed} hint={counts} />
        </>
      ) : (
        <>
          <RolePick printed={printed} />
          <p className={styles.hint}>No word that is known. {counts}</p>
        </>
      )}
    </section>
  );
}

function OtherMeaning({ printed, hint }: { printed: string; hint: string }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <Button className={styles.other} aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
        It means something else here
      </Button>
      {isOpen && (
        <>
          <RolePick printed={printed} />
          <p className={styles.hint}>{hint}</p>
        </>
      )}
    </>
  );
}

const readAs = (meanings: readonly Meaning[]) =>
  rolesInWords([...new Set(meanings.map(({ role }) => role))]);

const pinsInWords = (count: number) =>
  count === 1 ? "this pin" : `all ${count} pins that have it`;
