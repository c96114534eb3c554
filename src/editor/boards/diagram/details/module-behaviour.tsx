import { Plus, X } from "lucide-react";
import type { Job, PartOf, PinId } from "../../../../job/index.ts";
import {
  addModuleLoad,
  addModulePath,
  type ModulePath,
  removeModuleLoad,
  removeModulePath,
  setBehaviourTold,
  setModuleLoad,
  setModulePath,
} from "../../../../session/index.ts";
import { Button } from "../../../app/controls/index.ts";
import { useSession } from "../../../session-context.tsx";
import { Choice, Tick } from "../../plug/fields.tsx";
import styles from "./details.module.css";
import { NumberField } from "./number-field.tsx";
import { PinPair, pinText } from "./pin-pair.tsx";

type Module = PartOf<"module">;
type Does = ModulePath["does"];

const DEEDS: readonly { readonly value: Does; readonly text: string }[] = [
  { value: "always", text: "always" },
  { value: "follow", text: "while the input is on" },
  { value: "invert", text: "while the input is off" },
  { value: "toggle", text: "on and off, press by press" },
  { value: "delay-on", text: "some time after the input comes on" },
  { value: "delay-off", text: "until some time after the input goes off" },
  { value: "flash", text: "flashing while the input is on" },
];

/** What the seconds of a deed are called; those without take none. */
const SECONDS: Readonly<Partial<Record<Does, string>>> = {
  "delay-on": "Waits",
  "delay-off": "Holds on for",
  flash: "On and off for",
};

/** What the module joins, when, and what it takes itself: as far as somebody knows. */
export function ModuleBehaviour({ part }: { part: Module }) {
  const session = useSession();
  const { id, pins, behaviour } = part;
  const edit = (change: (draft: Job) => void) => session.edit(`Set what ${id} does`, change);
  const few = pins.length < 2;
  return (
    <>
      <h4>What it does</h4>
      <Tick
        label="I know what it does"
        value={behaviour !== undefined}
        onChange={(told) => edit((draft) => setBehaviourTold(draft, id, told))}
      />
      <p className={styles.hint}>
        {behaviour === undefined
          ? "Not known: what hangs on its outputs stays undecided."
          : "What does not stand here it does not do: pins that nothing joins stay apart."}
      </p>
      <ul className={styles.rows}>
        {behaviour?.paths.map((path, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a path is known by its place alone
          <PathRow key={index} part={part} path={path} index={index} edit={edit} />
        ))}
      </ul>
      <Button
        icon={<Plus aria-hidden />}
        disabled={few}
        onClick={() => edit((draft) => addModulePath(draft, id))}
      >
        Add what it switches
      </Button>
      {behaviour?.loads?.map((load, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a load is known by its place alone
        <div key={index} className={styles.source}>
          <PinPair
            pins={pins}
            between={load.between}
            labels={["Draws from", "To"]}
            onChange={(between) => edit((draft) => setModuleLoad(draft, id, index, { between }))}
          />
          <NumberField
            label="Through"
            unit="Ω"
            value={load.ohms}
            onChange={(ohms) =>
              ohms !== undefined && edit((draft) => setModuleLoad(draft, id, index, { ohms }))
            }
          />
          <Button
            tone="quiet"
            icon={<X aria-hidden />}
            aria-label={`Take out load ${index + 1}`}
            onClick={() => edit((draft) => removeModuleLoad(draft, id, index))}
          />
        </div>
      ))}
      <Button
        icon={<Plus aria-hidden />}
        disabled={few}
        onClick={() => edit((draft) => addModuleLoad(draft, id))}
      >
        Add what it draws itself
      </Button>
    </>
  );
}

interface PathRowProps {
  part: Module;
  path: ModulePath;
  index: number;
  edit: (change: (draft: Job) => void) => void;
}

function PathRow({ part, path, index, edit }: PathRowProps) {
  const { id, pins } = part;
  const { between, does, input, active, seconds } = path;
  const set = (change: Parameters<typeof setModulePath>[3]) =>
    edit((draft) => setModulePath(draft, id, index, change));
  const inputs: { value: PinId | ""; text: string }[] = [
    { value: "", text: does === "flash" ? "none: while it has power" : "not known" },
    ...pins.map((pin) => ({ value: pin.id, text: pinText(pin) })),
  ];
  const deed = (next: Does) =>
    set({
      does: next,
      ...(next === "always" ? { input: undefined, active: undefined } : {}),
      ...(SECONDS[next] ? {} : { seconds: undefined }),
    });
  const timed = SECONDS[does];
  const lacks = lackOf(path);
  return (
    <li className={styles.contact}>
      <div className={styles.source}>
        <PinPair
          pins={pins}
          between={between}
          labels={["Joins", "With"]}
          onChange={(next) => set({ between: next })}
        />
        <Button
          tone="quiet"
          icon={<X aria-hidden />}
          aria-label={`Take out what joins ${between.join(" and ")}`}
          onClick={() => edit((draft) => removeModulePath(draft, id, index))}
        />
      </div>
      <div className={styles.source}>
        <div className={styles.whole}>
          <Choice label="When" value={does} options={DEEDS} onChange={deed} />
        </div>
        {does !== "always" && (
          <>
            <Choice
              label="Input"
              value={input ?? ""}
              options={inputs}
              onChange={(pin) => set({ input: pin || undefined })}
            />
            <Choice
              label="On means"
              value={active ?? "high"}
              options={[
                { value: "high", text: "fed" },
                { value: "low", text: "grounded" },
              ]}
              onChange={(next) => set({ active: next === "high" ? undefined : next })}
            />
          </>
        )}
        {timed && (
          <NumberField
            label={timed}
            unit="s"
            zero
            value={seconds}
            onChange={(next) => set({ seconds: next })}
          />
        )}
      </div>
      {lacks && <p className={styles.hint}>{lacks}</p>}
    </li>
  );
}

/** What is still to be said of a path before anybody can work it out; null when nothing is. */
function lackOf({ does, input, seconds, between }: ModulePath): string | null {
  const ends = between.join(" and ");
  if (does !== "always" && does !== "flash" && input === undefined)
    return `Say which pin decides: until then nobody can tell when ${ends} are joined.`;
  if (SECONDS[does] && seconds === undefined) return "Say how many seconds, if you know them.";
  return null;
}
