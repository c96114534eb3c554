import type { CavityRef, Id, Job, Reading, When } from "../../job/index.ts";
import {
  type DropsAlong,
  dropsAlong,
  type ExpectedReading,
  expectedAt,
  type JudgedReading,
  judgeReading,
  type Moves,
  movesOf,
  type Prediction,
  predict,
  type ReadingSetup,
  stateMoves,
  type TrialOutcome,
  trialOutcome,
  whenCurrentFlows,
} from "../../readings/index.ts";
import {
  type JudgedEvidence,
  judgedEvidence,
  type SheetModel,
  type SheetOptions,
  sheetModel,
} from "../../sheet/index.ts";
import { analysisOf } from "../analysis.ts";
import { type Comparison, compareMachines } from "../comparison/index.ts";
import { type MeterPictures, meterPictures } from "./meter-pictures.ts";

/** What a screen asks of the solver about one machine: plain data, so that it can be asked elsewhere. */
export type Question =
  /** What to know before a reading is taken. */
  | { readonly about: "setup"; readonly setup: ReadingSetup }
  /** A reading beside what a healthy machine shows. */
  | { readonly about: "reading"; readonly reading: Reading }
  /** The readings worth taking at a cavity. */
  | { readonly about: "cavity"; readonly cavity: CavityRef }
  /** Every reading of the machine, the newest first. */
  | { readonly about: "evidence" }
  /** What drops along the way of a load's current, or through a cavity: in `when` if it flows then. */
  | { readonly about: "drops"; readonly of: Id | CavityRef; readonly when: When | null }
  /** What was measured at each row of the pin table of a plug; null: of no plug. */
  | { readonly about: "meter"; readonly plug: Id | null }
  /** What a trial sets in motion and how it leaves the loads. */
  | { readonly about: "trial"; readonly when: When }
  /** One plug on every machine of the job, whichever is at hand. */
  | { readonly about: "comparison"; readonly plug: Id }
  /** The page of one plug. */
  | { readonly about: "sheet"; readonly options: Omit<SheetOptions, "check"> };

export interface SetupAnswer {
  readonly prediction: Prediction;
  /** Null where the state can't be, so that nothing can be said. */
  readonly moves: Moves | null;
}

/** A reading worth taking, with what it sets in motion: neither is shown without the other. */
export interface OfferedReading extends ExpectedReading {
  readonly moves: Moves | null;
}

/** The way of a current in a state that has it, and what that state sets in motion. */
export interface DropsAnswer extends DropsAlong {
  /** Null where no position of the switches sends a current there. */
  readonly when: When | null;
  readonly moves: ReturnType<typeof stateMoves>;
}

interface Answers {
  readonly setup: SetupAnswer;
  readonly reading: JudgedReading;
  readonly cavity: readonly OfferedReading[];
  readonly drops: DropsAnswer;
  readonly evidence: readonly JudgedEvidence[];
  readonly meter: MeterPictures;
  readonly trial: TrialOutcome;
  readonly comparison: Comparison | null;
  readonly sheet: SheetModel;
}

export type AnswerTo<Q extends Question> = Answers[Q["about"]];

/** Each kind of question and what answers it, here or in whatever thread asks. */
const ANSWERS: {
  readonly [A in Question["about"]]: (
    job: Job,
    machine: Id,
    question: Extract<Question, { about: A }>,
  ) => Answers[A];
} = {
  setup: (job, machine, { setup }) => ({
    prediction: predict(job, machine, setup),
    moves: movesOf(job, machine, setup),
  }),
  reading: (job, machine, { reading }) => judgeReading(job, machine, reading),
  cavity: (job, machine, { cavity }) =>
    expectedAt(job, machine, cavity).map((one) => ({
      ...one,
      moves: movesOf(job, machine, one.setup),
    })),
  drops: (job, machine, { of, when }) => {
    const asked = when && dropsAlong(job, machine, of, when);
    if (asked && when && asked.why === null)
      return { ...asked, when, moves: stateMoves(job, machine, when) };
    const found = whenCurrentFlows(job, machine, of);
    if (found === null) {
      const none = `In no position of the switches does a current flow through ${of}, as far as the drawing tells. What a module does after a press or a delay is not followed here.`;
      const atRest = dropsAlong(job, machine, of, {});
      const why = atRest.isUnsaid ? atRest.why : none;
      return { ...atRest, legs: [], amps: 0, why, when: null, moves: null };
    }
    const moves = stateMoves(job, machine, found);
    return { ...dropsAlong(job, machine, of, found), when: found, moves };
  },
  evidence: (job, machine) =>
    [...(job.machines.find(({ id }) => id === machine)?.readings ?? [])]
      .reverse()
      .map((reading) => judgedEvidence(job, machine, reading)),
  meter: (job, machine, { plug }) => meterPictures(job, machine, plug),
  trial: (job, machine, { when }) => trialOutcome(job, machine, when),
  comparison: (job, _machine, { plug }) => compareMachines(job, plug),
  sheet: (job, machine, { options }) =>
    sheetModel(job, machine, { ...options, check: analysisOf(job, machine) }),
};

/** Works the answer out. A pure function of what is asked; the job must not change in place. */
export function answerTo<Q extends Question>(job: Job, machine: Id, question: Q): AnswerTo<Q> {
  // The entry of this kind of question takes it; that much can't be told from its type.
  const answer = ANSWERS[question.about] as (job: Job, machine: Id, question: Q) => unknown;
  return answer(job, machine, question) as AnswerTo<Q>;
}

/** The same for two questions that ask the same. */
export const keyOfQuestion = (question: Question): string => JSON.stringify(question);
