import { useEffect, useRef, useState } from "react";
import { boxContains } from "../../../base/index.ts";
import { onViewRequest, pictureFileOf, viewBox } from "../../../session/index.ts";
import { registerAnchors, registerLinkTarget } from "../../link-drag.tsx";
import { useSelected, useSession } from "../../session-context.tsx";
import { useNoticePlace } from "../../use-notice-place.ts";
import { type Board, createBoard } from "./board.ts";
import { BoardProvider, useBoardState } from "./board-context.tsx";
import { BoardMenu } from "./board-menu.tsx";
import { answer, modulePinNear, resize, reveal, seesAll, showsWholePicture } from "./board-view.ts";
import { BoardCanvas } from "./canvas.tsx";
import { ChangesStrip } from "./changes-strip.tsx";
import styles from "./diagram-board.module.css";
import { EmptyBoard } from "./empty-board.tsx";
import { useBoardKeys } from "./gestures/use-board-keys.ts";
import { usePointer } from "./gestures/use-pointer.ts";
import { Hint } from "./hint.tsx";
import { InPlaceEditor } from "./in-place-editor.tsx";
import { LiveBar } from "./live/live-bar.tsx";
import { LiveReadout } from "./live/live-readout.tsx";
import { LiveTargets } from "./live/live-targets.tsx";
import { OperateButton } from "./live/operate-button.tsx";
import { usePicture } from "./picture/use-picture.ts";
import { NetsPanel } from "./scan/nets-panel.tsx";
import { ScanBar } from "./scan/scan-bar.tsx";
import { ScanDock } from "./scan/scan-dock.tsx";
import { WordsSide } from "./scan/words-side.tsx";
import { SheetBar } from "./sheet-bar.tsx";
import { Toolbar } from "./toolbar.tsx";

interface DiagramBoardProps {
  onOpenDemo: () => void;
}

/** The user's scan with the traced circuit over it. Fills its parent. */
export function DiagramBoard({ onOpenDemo }: DiagramBoardProps) {
  const session = useSession();
  const [board] = useState(() => createBoard(session));
  const empty = useSelected((state) => state.job.diagram.sheets.length === 0);
  const operating = useSelected((state) => state.operate.on);
  const single = useSelected((state) => state.job.diagram.sheets.length === 1);
  return (
    <BoardProvider value={board}>
      <div className={styles.board}>
        {operating ? <LiveBar /> : <Toolbar />}
        {!operating && <ScanBar />}
        <div className={styles.work}>
          <div className={styles.middle}>
            <View board={board} />
            {empty && <EmptyBoard onOpenDemo={onOpenDemo} />}
          </div>
          <NetsPanel />
          <WordsSide />
        </div>
        {!(operating && single) && <SheetBar />}
      </div>
    </BoardProvider>
  );
}

/** Milliseconds in which bars and panels have taken their places. */
const SETTLES = 400;

function View({ board }: { board: Board }) {
  const session = useSession();
  const surface = useRef<HTMLDivElement>(null);
  const over = useRef<HTMLDivElement>(null);
  const sheet = useSelected((state) => state.sheet);
  const key = useSelected((state) => state.key);
  const file = useSelected(pictureFileOf);
  const image = useSelected((state) => {
    const of = state.job.diagram.sheets.find((one) => one.id === state.sheet)?.image;
    return of ? `${of.width} ${of.height}` : "";
  });
  const size = useBoardState((state) => state.size);
  const operating = useSelected((state) => state.operate.on && !state.draft);
  const refit = useRef(false);
  const { tiles, missing } = usePicture(file);
  usePointer(board, surface);
  useBoardKeys(board, surface);
  useNoticePlace(over);

  useEffect(() => {
    const element = surface.current;
    if (!element) return;
    const observer = new ResizeObserver(([entry]) => {
      const box = entry?.contentRect;
      if (!box) return;
      // The scan desk's bars and lists come and go: a picture shown whole stays whole. Without it somebody
      // may be drawing, and must not have the picture move under the hand.
      const wasWhole = session.get().scanDesk && showsWholePicture(board);
      resize(board, { width: Math.round(box.width), height: Math.round(box.height) });
      if (refit.current || wasWhole) board.fit();
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [board, session]);

  // Another job may use the same sheet ids.
  // biome-ignore lint/correctness/useExhaustiveDependencies: runs for every job opened
  useEffect(() => {
    board.show({ cameras: {}, wire: null, editing: null, menu: null, preview: null });
  }, [board, key]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a sheet is fitted when it is first seen
  useEffect(() => {
    if (sheet !== null && size.width > 0 && !board.get().cameras[sheet]) board.fit();
  }, [board, key, sheet, size]);

  const looked = useRef({ key, sheet, image });
  useEffect(() => {
    const before = looked.current;
    looked.current = { key, sheet, image };
    // Squared up, or undone: the same sheet has a picture of another size.
    const isSame = before.key === key && before.sheet === sheet;
    if (isSame && before.image !== image) board.fit();
  }, [board, key, sheet, image]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: runs when operating begins and ends
  useEffect(() => {
    // The button that led in or out is gone with its press: the keys go on on the board.
    if (document.activeElement === document.body) surface.current?.focus({ preventScroll: true });
    // The board gets other room: a sheet that was wholly in sight stays so, and fills it.
    refit.current = seesAll(board);
    const timer = setTimeout(() => {
      refit.current = false;
    }, SETTLES);
    return () => clearTimeout(timer);
  }, [board, operating]);

  useEffect(() => onViewRequest((request) => answer(board, request)), [board]);

  useEffect(() => {
    // What is begun with one tool is not finished with another.
    let { tool, selection } = session.get();
    return session.subscribe(() => {
      const now = session.get();
      if (now.tool !== tool) {
        tool = now.tool;
        if (board.get().wire || board.get().ghost) board.show({ wire: null, ghost: null });
      }
      if (now.selection === selection) return;
      selection = now.selection;
      const editing = board.get().editing;
      if (editing !== null && !selection.includes(editing)) board.show({ editing: null });
      reveal(board, selection);
    });
  }, [board, session]);

  useEffect(() => {
    const place = (clientX: number, clientY: number) => {
      const box = surface.current?.getBoundingClientRect();
      if (!box) return null;
      const inside =
        clientX >= box.left && clientX <= box.right && clientY >= box.top && clientY <= box.bottom;
      return inside ? board.toSheet([clientX - box.left, clientY - box.top]) : null;
    };
    const stopTarget = registerLinkTarget((clientX, clientY) => {
      const at = place(clientX, clientY);
      const scene = board.scene();
      if (!at || !scene) return null;
      return modulePinNear(board, at);
    });
    const stopAnchors = registerAnchors((ref) => {
      const box = surface.current?.getBoundingClientRect();
      const spot = board.scene()?.pins.get(ref);
      if (!box || !spot) return null;
      if (!boxContains(viewBox(board.camera(), board.get().size), spot.at)) return null;
      const [x, y] = board.toView(spot.at);
      return { x: box.left + x, y: box.top + y };
    });
    return () => {
      stopTarget();
      stopAnchors();
    };
  }, [board]);

  return (
    <>
      <div
        ref={surface}
        className={styles.surface}
        data-blank={file === null}
        role="application"
        aria-label="Diagram board"
        aria-describedby="diagram-board-help"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a canvas that answers keys must take the focus
        tabIndex={0}
      >
        <BoardCanvas tiles={tiles} />
      </div>
      <p id="diagram-board-help" className="visually-hidden">
        Shift and F10 opens a menu. Everything on this board is also in the list of parts and wires.
      </p>
      <div ref={over} className={styles.over}>
        <ChangesStrip />
      </div>
      <Hint missing={missing} />
      <ScanDock />
      <InPlaceEditor />
      <BoardMenu />
      <OperateButton />
      {operating && <LiveTargets />}
      {operating && <LiveReadout />}
    </>
  );
}
