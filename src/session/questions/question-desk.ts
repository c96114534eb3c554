import type { Id, Job } from "../../job/index.ts";
import { type AnalysisLine, createAnalysisLine } from "../analysis-line.ts";
import type { OpenAnalysis } from "../analysis-server.ts";
import { isLarge } from "../large-job.ts";
import type { Session } from "../session.ts";
import { type AnswerTo, answerTo, keyOfQuestion, type Question } from "./question.ts";

/**
 * Where the screens ask the solver about the open job and the machine at hand. A job of ordinary
 * size is answered at once, a large one beside the screen. An answer is only ever given for the very
 * job, machine and question that it was worked out for, so that none can take the place of another.
 */
export interface QuestionDesk {
  /** The answer; null while it is being worked out, or nobody has asked for it yet. */
  answer<Q extends Question>(question: Q): AnswerTo<Q> | null;
  /** Has it worked out, again after every edit, until the function that comes back is called. */
  ask(question: Question): () => void;
  subscribe(listener: () => void): () => void;
}

/** Questions that would hold others up for long: broken off once nobody waits for the answer. */
const LONG: ReadonlySet<Question["about"]> = new Set(["sheet", "comparison"]);

/** Parts and wires past which a trial, which is many states in a row, takes longer than a frame. */
const MANY_TO_PLAY = 120;

/** The same where every machine of the job is checked and all its readings are judged. */
const MANY_TO_COMPARE = 300;

const MANY: Readonly<Partial<Record<Question["about"], number>>> = {
  trial: MANY_TO_PLAY,
  comparison: MANY_TO_COMPARE,
};

const isBeside = (job: Job, { about }: Question): boolean => isLarge(job, MANY[about]);

const desks = new WeakMap<Session, QuestionDesk>();

/** The session's desk; one that answers everything at once where no other was set up. */
export function questionDeskOf(session: Session): QuestionDesk {
  const desk = desks.get(session) ?? createDesk(session, null);
  desks.set(session, desk);
  return desk;
}

/** Has questions about large jobs answered beside the screen. To be called before anything is shown. */
export function keepAnswering(session: Session, open: OpenAnalysis): QuestionDesk {
  const desk = createDesk(session, open);
  desks.set(session, desk);
  return desk;
}

interface UnderWay {
  readonly job: Job;
  readonly machine: Id;
  readonly key: string;
  readonly question: Question;
}

function createDesk(session: Session, open: OpenAnalysis | null): QuestionDesk {
  const listeners = new Set<() => void>();
  const tell = () => {
    for (const listener of [...listeners]) listener();
  };
  /** Null where nothing can be worked out beside the screen: then everything is answered at once. */
  let line: AnalysisLine | null = open && createAnalysisLine(open);
  const answers = new WeakMap<Job, Map<string, unknown>>();
  /** What the screens wait for, with how many of them do. */
  const wanted = new Map<string, { readonly question: Question; count: number }>();
  let busy: UnderWay | null = null;

  const answersFor = (job: Job) => {
    const known = answers.get(job) ?? new Map<string, unknown>();
    answers.set(job, known);
    return known;
  };

  /** Sends the first question that somebody waits for and nobody has answered. */
  const pump = () => {
    const { job, machine } = session.get();
    if (!line || busy) return;
    const known = answersFor(job);
    const first = [...wanted].find(
      ([key, { question }]) => isBeside(job, question) && !known.has(`${machine} ${key}`),
    );
    if (!first) return;
    const [key, { question }] = first;
    const mine: UnderWay = { job, machine, key, question };
    busy = mine;
    line
      .ask(job, (port, changes) => port.answer(changes, machine, question))
      .then((answer) => known.set(`${machine} ${key}`, answer))
      .catch(() => {
        // Broken off here, or there is no place beside the screen after all.
        if (busy !== mine) return;
        line?.stop();
        line = null;
      })
      .finally(() => {
        if (busy !== mine) return;
        busy = null;
        tell();
        pump();
      });
  };

  const breakOff = () => {
    if (!line || !busy || !LONG.has(busy.question.about)) return;
    const { job, machine } = session.get();
    if (busy.job === job && busy.machine === machine && wanted.has(busy.key)) return;
    busy = null;
    line.stop();
  };

  session.subscribe(() => {
    breakOff();
    pump();
  });

  return {
    answer<Q extends Question>(question: Q): AnswerTo<Q> | null {
      const { job, machine } = session.get();
      const known = answersFor(job);
      const key = `${machine} ${keyOfQuestion(question)}`;
      if (!known.has(key)) {
        if (line && isBeside(job, question)) return null;
        known.set(key, answerTo(job, machine, question));
      }
      return known.get(key) as AnswerTo<Q>;
    },
    ask(question) {
      const key = keyOfQuestion(question);
      const own = wanted.get(key) ?? { question, count: 0 };
      own.count++;
      wanted.set(key, own);
      pump();
      let asks = true;
      return () => {
        if (!asks) return;
        asks = false;
        own.count--;
        if (own.count > 0) return;
        wanted.delete(key);
        breakOff();
        pump();
      };
    },
    subscribe(listener) {
      listeners.add(listener);
      const leave = session.subscribe(listener);
      return () => {
        listeners.delete(listener);
        leave();
      };
    },
  };
}
