import type { Id, Picture } from "../../job/index.ts";
import type { Session } from "../session.ts";
import { createStore, type Store } from "../store.ts";
import { pictureFileOf } from "./picture-file.ts";
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

/**
 * The picture of the sheet at hand, kept ready in a thread of its own, one at a time. The thread is let go
 * with its memory when another job is opened, or no sheet shows that picture any more.
 */
export interface PageDesk extends Store<PageState> {
  /**
   * Does work on the picture of the sheet at hand, made ready first where it is not. One piece of work
   * at a time: the next waits. Null when it was called off, failed (see `problem`), or the sheet or its
   * picture changed meanwhile, which breaks it off: a late answer is never used.
   */
  run<T>(
    what: string,
    work: (port: TracePort, tell: TellShare, page: ReadyPage) => Promise<T>,
  ): Promise<T | null>;
  /**
   * The same for what nobody waits for: nothing is shown of it, and it is broken off, with null for an
   * answer, as soon as anything else is asked for.
   */
  runQuietly<T>(
    work: (port: TracePort, tell: TellShare, page: ReadyPage) => Promise<T>,
  ): Promise<T | null>;
  /**
   * A small question about the picture, beside whatever is under way; null while it is not ready, or
   * when the sheet or its picture changed meanwhile.
   */
  peek<T>(question: (port: TracePort) => Promise<T>): Promise<T | null>;
  /** Breaks off what is under way and all that waits. */
  callOff(): void;
  /** Puts away what was said of work that failed. */
  forgetProblem(): void;
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
  const { sheet } = session.get();
  const file = pictureFileOf(session.get());
  return sheet !== null && file !== null ? { sheet, file } : null;
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
  /** Whether what is under way is for a picture that is no longer shown; null while nothing is. */
  let isForNobody: (() => boolean) | null = null;
  /** Whether what went wrong was on a picture that is no longer shown. */
  let isProblemOld = () => false;
  /** Work that nobody waits for, from when it is asked for to its end. */
  let quiet: { isOff: boolean; isUnderWay: boolean } | null = null;

  /** Whose picture the port was opened for. */
  let inHand: { readonly key: string; readonly file: string } | null = null;

  /** Whether the job with the picture in hand was left, or shows it nowhere. */
  const isGone = (): boolean => {
    const { key, job } = session.get();
    return (
      inHand !== null &&
      (key !== inHand.key || !job.diagram.sheets.some(({ image }) => image?.file === inHand?.file))
    );
  };

  session.subscribe(() => {
    // What comes after it, on another sheet, need not wait for work whose answer is not used.
    if (isForNobody?.()) {
      isForNobody = null;
      port?.callOff();
    }
    if (store.get().problem !== null && isProblemOld()) show({ problem: null });
    // Not in the middle of work, which ends soon: it is of a picture that is no longer shown.
    if (isGone()) line = line.then(() => isGone() && close());
  });

  const ready = async (file: string): Promise<{ port: TracePort; page: ReadyPage }> => {
    const known = store.get();
    if (port && known.file === file && known.page) return { port, page: known.page };
    show({ file: null, page: null });
    const picture = await getPicture(file);
    if (!picture)
      throw new Error("The picture of this sheet is not with the job. Import it again.");
    port ??= open();
    inHand = { key: session.get().key, file };
    const page = await port.open(picture, (share) =>
      show({ work: { what: "Making the picture ready", share } }),
    );
    show({ file, page });
    return { port, page };
  };

  const close = () => {
    port?.close();
    port = null;
    inHand = null;
    show({ file: null, page: null, work: null });
  };

  /** `what` null: nobody waits for it. */
  const queue = <T>(
    what: string | null,
    work: (port: TracePort, tell: TellShare, page: ReadyPage) => Promise<T>,
  ): Promise<T | null> => {
    const asked = atHand(session);
    const { key } = session.get();
    const begun = round;
    if (quiet) {
      quiet.isOff = true;
      if (quiet.isUnderWay) port?.callOff();
    }
    const own = what === null ? { isOff: false, isUnderWay: false } : null;
    quiet = own;
    const isElsewhere = () => {
      const now = atHand(session);
      const { key: open_ } = session.get();
      return open_ !== key || now?.file !== asked?.file || now?.sheet !== asked?.sheet;
    };
    const isStale = () => begun !== round || own?.isOff || isElsewhere();
    const tell: TellShare = (share) => {
      if (what !== null) show({ work: { what, share } });
    };
    const turn = line.then(async () => {
      if (!asked || isStale()) return null;
      if (own) own.isUnderWay = true;
      else show({ problem: null });
      isForNobody = isStale;
      tell(0);
      try {
        const at = await ready(asked.file);
        if (isStale()) return null;
        tell(0);
        const answer = await work(at.port, tell, at.page);
        return isStale() ? null : answer;
      } catch (error) {
        const name = error instanceof Error ? error.name : "";
        const isOff = name === "CalledOff" || isStale();
        // Nothing more comes of that thread: the next work gets another.
        if (name === "BrokenThread") close();
        if (!isOff && what !== null) {
          isProblemOld = isElsewhere;
          show({ problem: error instanceof Error ? error.message : String(error) });
        }
        return null;
      } finally {
        isForNobody = null;
        if (own) own.isUnderWay = false;
        if (quiet === own) quiet = null;
        show({ work: null });
      }
    });
    line = turn;
    return turn;
  };

  return {
    ...store,
    run: queue,
    runQuietly: (work) => queue(null, work),
    peek: async (question) => {
      const { file, page } = store.get();
      const isReady = () => page !== null && file === atHand(session)?.file;
      if (!port || !isReady()) return null;
      const answer = await question(port).catch(() => null);
      return isReady() && store.get().file === file ? answer : null;
    },
    callOff: () => {
      round++;
      port?.callOff();
    },
    forgetProblem: () => show({ problem: null }),
  };
}
