import { type CleanStep, USUAL_STEPS } from "../../../scan/index.ts";

export type Does = CleanStep["does"];
/** The step that does it, with its settings. */
export type StepOf<D extends Does> = CleanStep & { readonly does: D };

/** A step with its settings, taken or not: what is left out keeps how it was set. */
export interface StepForm<S extends CleanStep = CleanStep> {
  readonly isOn: boolean;
  readonly step: S;
}

export type CleanForm = { readonly [D in Does]: StepForm<StepOf<D>> };

/**
 * The order in which steps are taken: ink is told by its colour and its faintness before contrast
 * and black-and-white take both away, and specks go last, when there is only ink and paper.
 */
export const STEP_ORDER: readonly Does[] = [
  "flatten",
  "bleed-through",
  "inks",
  "contrast",
  "black-and-white",
  "specks",
];

export function cleanFormOf(steps: readonly CleanStep[]): CleanForm {
  const entries = STEP_ORDER.map((does) => {
    const taken = steps.find((step) => step.does === does);
    return [does, { isOn: taken !== undefined, step: taken ?? USUAL_STEPS[does] }];
  });
  return Object.fromEntries(entries) as CleanForm;
}

export const stepsOf = (form: CleanForm): readonly CleanStep[] =>
  STEP_ORDER.flatMap((does) => (form[does].isOn ? [form[does].step] : []));

/** The form with one step switched on or off. */
export const switched = (form: CleanForm, does: Does, isOn: boolean): CleanForm => ({
  ...form,
  [does]: { ...form[does], isOn },
});

/** The form with one step set otherwise. */
export const setStep = (form: CleanForm, step: CleanStep): CleanForm => ({
  ...form,
  [step.does]: { ...form[step.does], step },
});
