export type { MeterPictures } from "./meter-pictures.ts";
export type { AnswerTo, DropsAnswer, OfferedReading, Question, SetupAnswer } from "./question.ts";
export * from "./question-desk.ts";
