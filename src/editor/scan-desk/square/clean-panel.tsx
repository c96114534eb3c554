import type { ReactNode } from "react";
import type { Ink } from "../../../scan/index.ts";
import { Tick } from "../../boards/plug/fields.tsx";
import { type CleanForm, type Does, STEP_ORDER, setStep, switched } from "./clean-form.ts";
import { SettingSlider } from "./setting-slider.tsx";
import styles from "./square-panel.module.css";

const TITLES: Readonly<Record<Does, string>> = {
  flatten: "Make shadows and paper white",
  "bleed-through": "Take the other side's print away",
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
  return (
    <ul className={styles.steps}>
      {STEP_ORDER.map((does) => (
        <li key={does} data-on={form[does].isOn}>
          <Tick
            label={TITLES[does]}
            value={form[does].isOn}
            onChange={(isOn) => onForm((now) => switched(now, does, isOn))}
          />
          {form[does].isOn && <Settings does={does} form={form} onForm={onForm} />}
        </li>
      ))}
    </ul>
  );
}

function Settings({ does, form, onForm }: CleanPanelProps & { does: Does }): ReactNode {
  switch (does) {
    case "flatten":
      return null;
    case "contrast": {
      const { step } = form.contrast;
      return (
        <>
          <SettingSlider
            label="Black from"
            value={step.black}
            least={0}
            most={step.white - 10}
            step={1}
            text={share(step.black / 255)}
            onChange={(black) => onForm((now) => setStep(now, { ...step, black }), "black")}
          />
          <SettingSlider
            label="White from"
            value={step.white}
            least={step.black + 10}
            most={255}
            step={1}
            text={share(step.white / 255)}
            onChange={(white) => onForm((now) => setStep(now, { ...step, white }), "white")}
          />
        </>
      );
    }
    case "black-and-white": {
      const { step } = form["black-and-white"];
      return (
        <>
          <SettingSlider
            label="Faint ink goes"
            value={step.k}
            least={0.05}
            most={0.6}
            step={0.01}
            text={share(step.k)}
            onChange={(k) => onForm((now) => setStep(now, { ...step, k }), "k")}
          />
          <SettingSlider
            label="Judged within"
            value={step.window}
            least={11}
            most={151}
            step={2}
            text={`${step.window} px`}
            onChange={(window) => onForm((now) => setStep(now, { ...step, window }), "window")}
          />
        </>
      );
    }
    case "specks": {
      const { step } = form.specks;
      return (
        <SettingSlider
          label="No larger than"
          value={step.largest}
          least={1}
          most={20}
          step={1}
          text={`${step.largest} px`}
          onChange={(largest) => onForm((now) => setStep(now, { ...step, largest }), "largest")}
        />
      );
    }
    case "bleed-through": {
      const { step } = form["bleed-through"];
      return (
        <SettingSlider
          label="Stays if as dark as"
          value={step.sure}
          least={0.1}
          most={0.9}
          step={0.05}
          text={`${share(step.sure)} of full ink`}
          onChange={(sure) => onForm((now) => setStep(now, { ...step, sure }), "sure")}
        />
      );
    }
    case "inks": {
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
  }
}

const share = (value: number): string => `${Math.round(value * 100)} %`;
