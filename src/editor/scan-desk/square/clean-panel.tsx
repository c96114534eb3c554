import { useRef } from "react";
import type { CleanStep, Ink } from "../../../scan/index.ts";
import { Tick } from "../../boards/plug/fields.tsx";
import {
  type CleanForm,
  type Does,
  STEP_ORDER,
  type StepOf,
  setStep,
  switched,
} from "./clean-form.ts";
import { SettingSlider } from "./setting-slider.tsx";
import styles from "./square-panel.module.css";

const TITLES: Readonly<Record<Does, string>> = {
  flatten: "Make shadows and paper white",
  "bleed-through": "Take the other side’s print away",
  inks: "Keep only some inks",
  contrast: "More contrast",
  "black-and-white": "Black and white",
  specks: "Take specks away",
};

const INKS: readonly { readonly ink: Ink; readonly text: string }[] = [
  { ink: "black", text: "black" },
  { ink: "red", text: "red" },
  { ink: "blue", text: "blue" },
  { ink: "other", text: "other colours" },
];

interface CleanPanelProps {
  form: CleanForm;
  onForm: (change: (form: CleanForm) => CleanForm, intention?: string) => void;
}

/** The steps of cleaning in the order in which they are taken, each with what can be set of it. */
export function CleanPanel({ form, onForm }: CleanPanelProps) {
  const opened = useRef<Does | null>(null);
  return (
    <>
      <p className={styles.lead}>
        Only what you need: lines and words are found without it too. The picture that came is kept.
      </p>
      <ul className={styles.steps}>
        {STEP_ORDER.map((does) => (
          <li
            key={does}
            data-on={form[does].isOn}
            ref={(item) => {
              // What can be set of a step just switched on comes into sight.
              if (!item || opened.current !== does || !form[does].isOn) return;
              opened.current = null;
              item.scrollIntoView({ block: "nearest" });
            }}
          >
            <Tick
              label={TITLES[does]}
              value={form[does].isOn}
              onChange={(isOn) => {
                if (isOn) opened.current = does;
                onForm((now) => switched(now, does, isOn));
              }}
            />
            {form[does].isOn && <Sliders does={does} form={form} onForm={onForm} />}
            {form[does].isOn && does === "inks" && <Inks form={form} onForm={onForm} />}
          </li>
        ))}
      </ul>
    </>
  );
}

/** A number of a step that a slider sets. */
interface Setting<S extends CleanStep = CleanStep> {
  readonly label: string;
  readonly value: (step: S) => number;
  readonly range: (step: S) => readonly [least: number, most: number];
  readonly by: number;
  readonly text: (step: S) => string;
  readonly set: (step: S, value: number) => S;
}

/** The sliders of each step, from the top. */
const SETTINGS: { readonly [D in Does]: readonly Setting<StepOf<D>>[] } = {
  flatten: [],
  inks: [],
  contrast: [
    {
      label: "Black from",
      value: ({ black }) => black,
      range: ({ white }) => [0, white - 10],
      by: 1,
      text: ({ black }) => share(black / 255),
      set: (step, black) => ({ ...step, black }),
    },
    {
      label: "White from",
      value: ({ white }) => white,
      range: ({ black }) => [black + 10, 255],
      by: 1,
      text: ({ white }) => share(white / 255),
      set: (step, white) => ({ ...step, white }),
    },
  ],
  "black-and-white": [
    {
      label: "Faint ink goes",
      value: ({ k }) => k,
      range: () => [0.05, 0.6],
      by: 0.01,
      text: ({ k }) => share(k),
      set: (step, k) => ({ ...step, k }),
    },
    {
      label: "Judged within",
      value: ({ window }) => window,
      range: () => [11, 151],
      by: 2,
      text: ({ window }) => `${window} px`,
      set: (step, window) => ({ ...step, window }),
    },
  ],
  specks: [
    {
      label: "No larger than",
      value: ({ largest }) => largest,
      range: () => [1, 20],
      by: 1,
      text: ({ largest }) => `${largest} px`,
      set: (step, largest) => ({ ...step, largest }),
    },
  ],
  "bleed-through": [
    {
      label: "Stays if as dark as",
      value: ({ sure }) => sure,
      range: () => [0.1, 0.9],
      by: 0.05,
      text: ({ sure }) => `${share(sure)} of full ink`,
      set: (step, sure) => ({ ...step, sure }),
    },
  ],
};

function Sliders<D extends Does>({ does, form, onForm }: CleanPanelProps & { does: D }) {
  const { step } = form[does];
  const settings: readonly Setting<StepOf<D>>[] = SETTINGS[does];
  return settings.map(({ label, value, range, by, text, set }) => {
    const [least, most] = range(step);
    return (
      <SettingSlider
        key={label}
        label={label}
        value={value(step)}
        least={least}
        most={most}
        step={by}
        text={text(step)}
        onChange={(next) => onForm((now) => setStep(now, set(step, next)), label)}
      />
    );
  });
}

function Inks({ form, onForm }: CleanPanelProps) {
  const { step } = form.inks;
  return (
    <div className={styles.inks}>
      {INKS.map(({ ink, text }) => (
        <Tick
          key={ink}
          label={text}
          value={step.keep.includes(ink)}
          onChange={(isKept) => {
            const keep = INKS.map((one) => one.ink).filter((one) =>
              one === ink ? isKept : step.keep.includes(one),
            );
            // Without any ink there is no picture.
            if (keep.length > 0) onForm((now) => setStep(now, { ...step, keep }));
          }}
        />
      ))}
    </div>
  );
}

const share = (value: number): string => `${Math.round(value * 100)} %`;
