import { Link2, Unlink } from "lucide-react";
import {
  type CavityRef,
  cavityRef,
  type PartOf,
  type Plug,
  pinRef,
  splitRef,
} from "../../job/index.ts";
import { plugTitle } from "../../plug/index.ts";
import {
  commandNamed,
  counterparts,
  drawnOf,
  leftOver,
  link,
  markRuns,
  unlink,
} from "../../session/index.ts";
import { useAnalysis, useSelected, useSession } from "../session-context.tsx";
import { CommandButton } from "./command-button.tsx";
import { Button } from "./controls/index.ts";
import styles from "./match-panel.module.css";

/** Which pin sits in which cavity: picked here, dragged across the boards, or proposed by marks. */
export function MatchPanel() {
  const session = useSession();
  const job = useSelected(drawnOf);
  const showMatches = useSelected((state) => state.showMatches);
  const modules = job.diagram.parts.filter((part) => part.kind === "module");
  const left = leftOver(job);
  const propose = commandNamed("match-by-marks");
  const toggle = commandNamed("toggle-matches");
  return (
    <section className={styles.panel} aria-label="Match">
      <h2>Match pins to cavities</h2>
      <p className={styles.lead}>
        Drag from a pin to its cavity across the boards, or pick here. A mark on the diagram and a
        mark on the plug can differ: the wire in the cavity decides.
      </p>
      <div className={styles.acts}>
        <CommandButton
          command={propose}
          icon={<Link2 aria-hidden />}
          tone={propose.canRun(session) ? "primary" : "plain"}
          worded
        />
        <Button
          aria-pressed={showMatches}
          disabled={!toggle.canRun(session)}
          onClick={() => toggle.run(session)}
        >
          Show matches across the boards
        </Button>
      </div>
      {modules.map((module) => (
        <ModuleMatches key={module.id} module={module} plugs={job.plugs} />
      ))}
      {modules.length === 0 && <p>No module on the diagram yet: its pins are what gets tied.</p>}
      <LeftOver plugs={job.plugs} cavities={left.cavities} />
    </section>
  );
}

/** Cavities with no pin, those of each plug in one line. */
function LeftOver({ plugs, cavities }: { plugs: readonly Plug[]; cavities: readonly CavityRef[] }) {
  if (cavities.length === 0) return null;
  const marks = (plug: Plug) =>
    cavities.filter((ref) => splitRef(ref).owner === plug.id).map((ref) => splitRef(ref).name);
  return (
    <div className={styles.left}>
      <strong>Left over on the plug</strong>
      {plugs
        .filter((plug) => marks(plug).length > 0)
        .map((plug) => (
          <p key={plug.id}>
            {plugs.length > 1 ? `${plugTitle(plug)}, ` : ""}
            {marks(plug).length === 1 ? "cavity" : `${marks(plug).length} cavities:`}{" "}
            {markRuns(marks(plug))}
          </p>
        ))}
    </div>
  );
}

function ModuleMatches({ module, plugs }: { module: PartOf<"module">; plugs: readonly Plug[] }) {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const selection = useSelected((state) => state.selection);
  const lit = counterparts(job, useAnalysis(), selection).refs;
  return (
    <table className={styles.table}>
      <caption>
        {module.id}
        {module.label ? ` · ${module.label}` : ""}
      </caption>
      <thead>
        <tr>
          <th scope="col">Pin</th>
          <th scope="col">Printed</th>
          <th scope="col">Cavity</th>
          <th scope="col">
            <span className="visually-hidden">Untie</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {module.pins.map((pin) => {
          const ref = pinRef(module.id, pin.id);
          const cavity = job.links.find((one) => one.pin === ref)?.cavity ?? "";
          return (
            <tr key={pin.id} data-lit={lit.has(ref)}>
              <th scope="row">
                <button
                  type="button"
                  className={styles.pin}
                  onClick={() => session.show({ selection: [ref] })}
                >
                  {pin.id}
                </button>
              </th>
              <td>{pin.printed ?? "–"}</td>
              <td>
                <CavityPick
                  name={`Cavity of pin ${ref}`}
                  value={cavity}
                  plugs={plugs}
                  onPick={(picked) =>
                    picked === ""
                      ? session.edit(`Untie ${ref}`, (draft) => unlink(draft, ref))
                      : session.edit(`Tie ${ref} to ${picked}`, (draft) => link(draft, ref, picked))
                  }
                />
              </td>
              <td>
                <Button
                  tone="quiet"
                  icon={<Unlink aria-hidden />}
                  aria-label={`Untie ${ref}`}
                  disabled={cavity === ""}
                  onClick={() => session.edit(`Untie ${ref}`, (draft) => unlink(draft, ref))}
                />
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

interface CavityPickProps {
  name: string;
  value: CavityRef | "";
  plugs: readonly Plug[];
  onPick: (cavity: CavityRef | "") => void;
}

function CavityPick({ name, value, plugs, onPick }: CavityPickProps) {
  const known = plugs.some((plug) => plug.id === splitRef(value).owner);
  return (
    <select
      aria-label={name}
      data-empty={value === ""}
      value={value}
      onChange={(event) => onPick(event.target.value)}
    >
      <option value="">none</option>
      {value !== "" && !known && <option value={value}>{value}</option>}
      {plugs.map((plug) => (
        <optgroup key={plug.id} label={plugTitle(plug)}>
          {plug.cavities.map((cavity) => {
            const ref = cavityRef(plug.id, cavity.mark);
            return (
              <option key={ref} value={ref} disabled={cavity.blocked}>
                {plugs.length > 1 ? ref : cavity.mark}
              </option>
            );
          })}
        </optgroup>
      ))}
    </select>
  );
}
