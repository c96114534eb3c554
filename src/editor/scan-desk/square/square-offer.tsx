import { Crop, X } from "lucide-react";
import { useEffect, useState, useSyncExternalStore } from "react";
import type { Id } from "../../../job/index.ts";
import type { ProposedCorners } from "../../../scan/index.ts";
import {
  isWorthSquaring,
  justImported,
  offerSquaring,
  originalOf,
  settleImported,
} from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { focusDiagram, isFocusLost } from "../../lost-focus.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { useJobStore } from "../../store-context.tsx";
import { openSquare, type SquarePort } from "../../workers/open-square.ts";
import { SquareDesk } from "./square-desk.tsx";
import styles from "./square-offer.module.css";

/**
 * Asks once whether a picture just brought in is to be squared up, where its page is plain to see and
 * is not the whole of it already. Looked for beside the screen; nothing waits for it.
 */
export function SquareOffer() {
  const session = useSession();
  const imported = justImported(session);
  const { sheets: waiting, offered } = useSyncExternalStore(imported.subscribe, imported.get);
  const sheetId = useSelected((state) => state.sheet);
  const sheet = useSelected((state) =>
    state.job.diagram.sheets.find((one) => one.id === state.sheet),
  );
  const isAsked = sheetId !== null && waiting.includes(sheetId) && sheet?.original === undefined;
  const found = useFoundPage(isAsked ? sheetId : null, sheet ? originalOf(sheet)?.file : undefined);
  const [opened, setOpened] = useState<Id | null>(null);

  if (opened !== null) {
    const close = () => {
      setOpened(null);
      // The question that opened it is gone: the keys go on on the board.
      setTimeout(() => {
        if (isFocusLost()) focusDiagram();
      });
    };
    return <SquareDesk sheetId={opened} start="square" onClose={close} />;
  }
  if (!isAsked || !found || !offered.includes(sheetId)) return null;
  return (
    <section className={styles.strip} aria-label="Offer to square up">
      <p className={styles.words} role="status">
        {found.of === "page"
          ? "The page does not fill this picture."
          : "The frame on this picture is not straight."}
      </p>
      <Button
        tone="quiet"
        icon={<Crop aria-hidden />}
        aria-label="Square up this picture?"
        onClick={() => {
          settleImported(session, sheetId);
          setOpened(sheetId);
        }}
      >
        <span>
          Square up<span className={styles.more}> this picture</span>?
        </span>
      </Button>
      <Button
        tone="quiet"
        icon={<X aria-hidden />}
        aria-label="Leave it as it is"
        onClick={() => settleImported(session, sheetId)}
      />
    </section>
  );
}

/** The page on a picture just imported; null while it is looked for, and where there is nothing to do. */
function useFoundPage(sheet: Id | null, file: string | undefined): ProposedCorners | null {
  const session = useSession();
  const store = useJobStore();
  const [found, setFound] = useState<{ file: string; page: ProposedCorners } | null>(null);
  useEffect(() => {
    if (sheet === null || file === undefined) return;
    let isGone = false;
    let port: SquarePort | null = null;
    const look = async () => {
      const picture = await store.getPicture(file);
      if (isGone || !picture) return;
      port = openSquare();
      const size = await port.open(picture);
      const page = await port.propose();
      if (isGone) return;
      if (page && isWorthSquaring(page, size)) {
        setFound({ file, page });
        offerSquaring(session, sheet);
      } else settleImported(session, sheet);
    };
    look()
      // Nobody asked for it, so nobody is told that it can't be done.
      .catch(() => {})
      .finally(() => port?.close());
    return () => {
      isGone = true;
      port?.close();
    };
  }, [sheet, file, session, store]);
  return found?.file === file ? (found?.page ?? null) : null;
}
