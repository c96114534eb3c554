import type { CheckedSoFar, CheckResult } from "../check/index.ts";
import { EMPTY_HISTORY, type Id, type Job } from "../job/index.ts";
import { analysisOf, keepAnalysis, knownAnalysis } from "./analysis.ts";
import { createAnalysisLine } from "./analysis-line.ts";
import { type OpenAnalysis, type ResultChange, resultFrom } from "./analysis-server.ts";
import { isLarge } from "./large-job.ts";
import type { Session } from "./session.ts";
import type { SessionState } from "./state.ts";

/** The analysis that the screens show. */
export interface Shown {
  /** Of the open job and the machine at hand, or of that job as it was a few edits ago. */
  readonly result: CheckResult;
  /** False while a newer one is on its way. */
  readonly current: boolean;
  /**
   * What of a current one is being looked at again and stands as it was before: readings and plugs by
   * id, as `isLookedAtAgain` takes them. Empty where the result is whole.
   */
  readonly again: readonly Id[];
}

/** Where the screens read roles and findings, whoever works them out. */
export interface AnalysisDesk {
  get(): Shown;
  subscribe(listener: () => void): () => void;
  /** Whether there is anything to show of the open job yet: `get` would hold the screen up. */
  isReady(): boolean;
}

/** Machines checked ahead of being looked at, at most. */
const MOST_AHEAD = 4;

const desks = new WeakMap<Session, AnalysisDesk>();

/** The session's desk; one that works everything out at once where no other was set up. */
export function analysisDeskOf(session: Session): AnalysisDesk {
  const desk = desks.get(session) ?? createDesk(session, null);
  desks.set(session, desk);
  return desk;
}

/** Has large jobs of this session checked beside the screen. To be called before anything is shown. */
export function keepAnalysed(session: Session, open: OpenAnalysis): AnalysisDesk {
  const desk = createDesk(session, open);
  desks.set(session, desk);
  return desk;
}

interface Answer {
  readonly key: string;
  readonly job: Job;
  readonly result: CheckResult;
  readonly again: readonly Id[];
}

const NOTHING: readonly Id[] = [];

function createDesk(session: Session, open: OpenAnalysis | null): AnalysisDesk {
  const listeners = new Set<() => void>();
  const tell = () => {
    for (const listener of [...listeners]) listener();
  };
  const line = open && createAnalysisLine(open);
  /** Whether nothing can be worked out beside the screen: then everything is worked out at once. */
  let failed = open === null;
  /** The last results of the far side. */
  let results = new Map<Id, CheckResult>();
  /** The job that the far side was last asked to begin with, by machine. */
  let sent = new Map<Id, Job>();
  let busy = false;
  /** The latest answer of each machine, whose key is the job's that it is of. */
  let answers = new Map<Id, Answer>();
  let before = session.get();
  let shown: Shown | null = null;

  const isBeside = ({ job }: SessionState) => !failed && isLarge(job);

  /** Whether the far side has begun with this very job and machine and is not at the end of it. */
  const isBegun = ({ job }: SessionState, machine: Id): boolean => {
    const answer = answers.get(machine);
    return answer?.job === job && answer.again.length > 0 && sent.get(machine) === job;
  };

  /** The machine at hand first; then, so that going over to it holds nothing up, each other one once. */
  const toAsk = (state: SessionState): Id | null => {
    const { job, machine } = state;
    if (!knownAnalysis(job, machine)) return machine;
    const others = job.machines.slice(0, MOST_AHEAD).map(({ id }) => id);
    return others.find((id) => id !== machine && (!answers.has(id) || isBegun(state, id))) ?? null;
  };

  /** Works out beside the screen what is not known yet and not under way, the newest job first. */
  const ask = () => {
    const state = session.get();
    if (busy || !isBeside(state)) return;
    const { job, key } = state;
    const machine = toAsk(state);
    if (machine === null) return;
    busy = true;
    let isNews = true;
    const asked = isBegun(state, machine) ? goOn(job, machine) : send(job, machine);
    asked
      .then((found) => {
        isNews = found !== null;
        if (found === null) return;
        const { result, again } = found;
        if (again.length === 0) keepAnalysis(job, result, machine);
        if (session.get().key === key) answers.set(machine, { key, job, result, again });
      })
      .catch(() => {
        failed = true;
        line?.stop();
      })
      .finally(() => {
        busy = false;
        if (isNews) shown = null;
        ask();
        if (isNews) tell();
      });
  };

  const send = async (job: Job, machine: Id): Promise<CheckedSoFar> => {
    const change = await lineOf().ask(
      job,
      (port, changes) => {
        sent.set(machine, job);
        return port.check(changes, machine);
      },
      () => {
        results = new Map();
        sent = new Map();
      },
    );
    return take(machine, change);
  };

  /** One more step with the job that was sent last. */
  const goOn = async (job: Job, machine: Id): Promise<CheckedSoFar | null> => {
    const change = await lineOf().ask(job, (port) => port.goOn(machine));
    return change && take(machine, change);
  };

  const lineOf = () => {
    if (!line) throw new Error("there is no place beside the screen");
    return line;
  };

  const take = (machine: Id, change: ResultChange): CheckedSoFar => {
    const result = resultFrom(results.get(machine) ?? null, change);
    results.set(machine, result);
    return { result, again: change.again };
  };

  session.subscribe(() => {
    const now = session.get();
    const { job, machine, key } = before;
    before = now;
    if (now.key !== key) {
      // Under another key it is the same document still, unless another was opened.
      const stays = now.history !== EMPTY_HISTORY || now.job === job;
      answers = stays ? rekeyed(answers, now.key) : new Map();
    }
    if (now.job === job && now.machine === machine && now.key === key) return;
    shown = null;
    ask();
  });

  const find = (): Shown => {
    const state = session.get();
    const { job, machine, key } = state;
    const whole = (result: CheckResult): Shown => {
      answers.set(machine, { key, job, result, again: NOTHING });
      return { result, current: true, again: NOTHING };
    };
    const known = knownAnalysis(job, machine);
    if (known) return whole(known);
    const older = answers.get(machine);
    if (isBeside(state) && older) {
      ask();
      return { result: older.result, current: older.job === job, again: older.again };
    }
    return whole(analysisOf(job, machine));
  };

  return {
    get: () => {
      shown ??= find();
      return shown;
    },
    subscribe: (listener) => {
      listeners.add(listener);
      const leave = session.subscribe(listener);
      return () => {
        listeners.delete(listener);
        leave();
      };
    },
    isReady: () => {
      const state = session.get();
      if (!isBeside(state) || answers.size > 0) return true;
      if (knownAnalysis(state.job, state.machine)) return true;
      ask();
      return failed;
    },
  };
}

const rekeyed = (answers: ReadonlyMap<Id, Answer>, key: string): Map<Id, Answer> =>
  new Map([...answers].map(([machine, answer]) => [machine, { ...answer, key }]));
