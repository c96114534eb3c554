import { ScanText, X } from "lucide-react";
import type { Job } from "../../../../job/index.ts";
import { drawnOf, pictureFileOf, traceDeskOf, type WordItem } from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import { listed } from "./net-words.ts";
import styles from "./scan-work.module.css";
import { useTrace } from "./use-trace.ts";
import { useWordDesk, useWords } from "./use-words.ts";

/**
 * Says that words which were read fit what was drawn since; or, where none were read, that splices which came with
 * lines bear names that nobody printed.
 */
export function WordsNote() {
  const desk = useWordDesk();
  const lines = traceDeskOf(useSession());
  return desk && lines && <Note desk={desk} lines={lines} />;
}

interface NoteProps {
  desk: NonNullable<ReturnType<typeof useWordDesk>>;
  lines: NonNullable<ReturnType<typeof traceDeskOf>>;
}

function Note({ desk, lines }: NoteProps) {
  const { isOpen, reading, file } = useWords(desk).state;
  const laid = useTrace((state) => state.laid);
  // The close look needs the room.
  const isLookedAt = useTrace((state) => state.place !== null);
  const job = useSelected(drawnOf);
  const isRead = useSelected(pictureFileOf) === file;
  if (isOpen || reading !== null || isLookedAt) return null;
  const fresh = isRead ? desk.fresh() : [];
  const splices = isRead ? [] : splicesAmong(job, laid ?? []);
  if (fresh.length + splices.length === 0) return null;
  return (
    <div className={styles.strip} role="status" data-note="words">
      <span className={styles.what}>{isRead ? freshWords(fresh) : laidWords(splices)}</span>
      <Button icon={<ScanText aria-hidden />} onClick={() => void desk.open()}>
        {isRead ? "Look at them" : "Read words"}
      </Button>
      <Button
        tone="quiet"
        icon={<X aria-hidden />}
        aria-label="Put away"
        onClick={isRead ? desk.hearFresh : lines.hearLaid}
      />
    </div>
  );
}

const splicesAmong = ({ diagram }: Job, ids: readonly string[]): readonly string[] =>
  diagram.parts.flatMap(({ id, kind }) => (kind === "splice" && ids.includes(id) ? [id] : []));

function freshWords(fresh: readonly WordItem[]): string {
  const names = fresh.filter(({ targets }) => targets[0]?.key.startsWith("name ")).length;
  const words =
    fresh.length === 1 ? "A word that was read fits" : `${fresh.length} words that were read fit`;
  const some = names === 1 ? ", one of them a name" : `, ${names} of them names`;
  const among = names === 0 || fresh.length === 1 ? "" : some;
  return `${words} what is drawn now${among}.`;
}

/** So many names are said one by one. */
const FEW = 3;

function laidWords(splices: readonly string[]): string {
  const [first, ...more] = splices;
  const names = splices.length <= FEW ? listed(splices) : `${first} to ${more.at(-1)}`;
  return splices.length === 1
    ? `The new splice is called ${names} for now: its printed name has not been read.`
    : `The ${splices.length} new splices are called ${names} for now: their printed names have not been read.`;
}
