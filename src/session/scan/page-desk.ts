import type { Id, Picture } from "../../job/index.ts";
import type { Session } from "../session.ts";
import { createStore, type Store } from "../store.ts";
import type { OpenTracePort, ReadyPage, TellShare, TracePort } from "./trace-port.ts";

/** Long work on a picture that is under way. */
export interface PageWork {
  /** What is done, as the user would say it: "Following lines". */
  readonly what: string;
  /** 0 to 1. */
  readonly share: number;
}

export interface PageState {
  /** The picture that was made ready, by its file; null before the first. */
  readonly file: string | null;
  readonly page: ReadyPage | null;
  readonly work: PageWork | null;
  /** A sentence for the user; null when nothing went wrong. */
  readonly problem: string | null;
}

/** The picture of the sheet at hand, kept ready in a thread of its own, one at a time. */
export interface PageDesk extends Store<PageState> {
  /**
   * Does work on the picture of the sheet at hand, made ready first where it is not. One piece of work
   * at a time: the next waits. Null when it was called off, failed (see `problem`), or the sheet or its
   * picture changed meanwhile: a late answer is never used.
   */
  run<T>(
    what: string,
    work: (port: TracePort, tell: TellShare, page: ReadyPage) => Promise<T>,
  ): Promise<T | null>;
  /** Breaks off what is under way and all that waits. */
  callOff(): void;
  /** Lets the picture go, with its memory. */
  close(): void;
}

const desks = new WeakMap<Session, PageDesk>();

/** Has pictures of this session worked on through ports that `open` opens. To be called before anything is shown. */
export function keepTracing(
  session: Session,
  open: OpenTracePort,
  getPicture: (file: string) => Promise<Picture | null>,
): PageDesk {
  const desk = createPageDesk(session, open, getPicture);
  desks.set(session, desk);
  return desk;
}

/** Null where the session was given no way to work on pictures. */
export const pageDeskOf = (session: Session): PageDesk | null => desks.get(session) ?? null;

/** The picture's file and the sheet that shows it; null when the sheet at hand has none. */
function atHand(session: Session): { readonly sheet: Id; readonly file: string } | null {
  const { job, sheet } = session.get();
  const file = job.diagram.sheets.find((one) => one.id === sheet)?.image?.file;
  return sheet !== null && file !== undefined ? { sheet, file } : null;
}

const NOT_BEGUN: PageState = { file: null, page: null, work: null, problem: null };

export function createPageDesk(
  session: Session,
  open: OpenTracePort,
  getPicture: (file: string) => Promise<Picture | null>,
): PageDesk {
  const store = createStore<PageState>(NOT_BEGUN);
  const show = (change: Partial<PageState>) => store.set((state) => ({ ...state, ...change }));
  let port: TracePort | null = null;
  let line: Promise<unknown> = Promise.resolve();
  /** Raised by every calling off: work that was asked for before does not begin. */
  let round = 0;

  const ready = async (file: string): Promise<{ port: TracePort; page: ReadyPage }> => {
    const known = store.get();
    if (port && known.file === file && known.page) return { port, page: known.page };
    show({ file: null, page: null });
    const picture = await getPicture(file);
    if (!picture)
      throw new Error("The picture of this sheet is not with the job. Import it again.");
    port ??= open();
    const page = await port.open(picture, (share) =>
      show({ work: { what: "Making the picture ready", share } }),
    );
    show({ file, page });
    return { port, page };
  };

  const close = () => {
    port?.close();
    port = null;
    show({ file: null, page: null, work: null });
  };

  return {
    ...store,
    run: (what, work) => {
      const asked = atHand(session);
      const { key } = session.get();
      const begun = round;
      const isStale = () => {
        const now = atHand(session);
        const { key: open_ } = session.get();
        return (
          begun !== round ||
          open_ !== key ||
          now?.file !== asked?.file ||
          now?.sheet !== asked?.sheet
        );
      };
      const turn = line.then(async () => {
        if (!asked || isStale()) return null;
        show({ work: { what, share: 0 }, problem: null });
        try {
          const at = await ready(asked.file);
          if (isStale()) return null;
          show({ work: { what, share: 0 } });
          const answer = await work(at.port, (share) => show({ work: { what, share } }), at.page);
          return isStale() ? null : answer;
        } catch (error) {
          if (!(error instanceof Error && error.name === "CalledOff") && !isStale()) {
            show({ problem: error instanceof Error ? error.message : String(error) });
          }
          return null;
        } finally {
          show({ work: null });
        }
      });
      line = turn;
      return turn;
    },
    callOff: () => {
      round++;
      port?.callOff();
    },
    close: () => {
      round++;
      close();
    },
  };
}
