import { ScanText, X } from "lucide-react";
import type { Job } from "../../../../job/index.ts";
import {
  drawnOf,
  isSure,
  pictureFileOf,
  type TraceDesk,
  traceDeskOf,
  type WordDesk,
} from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useSelected, useSession } from "../../../session-context.tsx";
import { NoteStrip } from "./note-strip.tsx";
import styles from "./scan-work.module.css";
import { useTrace } from "./use-trace.ts";
import { useWordDesk, useWords } from "./use-words.ts";
import { freshText, laidText } from "./words-note-text.ts";

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
  desk: WordDesk;
  lines: TraceDesk;
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
  if (!isRead)
    return (
      <Strip
        says={laidText(splices)}
        act="Read words"
        onAct={() => void desk.open()}
        onPutAway={lines.hearLaid}
      />
    );
  const openAtFresh = () => {
    const first = fresh.find(isSure) ?? fresh[0];
    if (first) desk.go(first.id);
    void desk.open();
  };
  return (
    <Strip
      says={freshText(fresh)}
      act={fresh.length === 1 ? "Look at it" : "Look at them"}
      onAct={openAtFresh}
      onPutAway={desk.hearFresh}
    />
  );
}

interface StripProps {
  says: string;
  act: string;
  onAct: () => void;
  onPutAway: () => void;
}

function Strip({ says, act, onAct, onPutAway }: StripProps) {
  return (
    <NoteStrip role="status" note="words">
      <span className={styles.what}>{says}</span>
      <Button icon={<ScanText aria-hidden />} onClick={onAct}>
        {act}
      </Button>
      <Button tone="quiet" icon={<X aria-hidden />} aria-label="Put away" onClick={onPutAway} />
    </NoteStrip>
  );
}

const splicesAmong = ({ diagram }: Job, ids: readonly string[]): readonly string[] =>
  diagram.parts.flatMap(({ id, kind }) => (kind === "splice" && ids.includes(id) ? [id] : []));
