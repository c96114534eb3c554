import { Link2 } from "lucide-react";
import type { Id } from "../../../job/index.ts";
import {
  commandNamed,
  drawnOf,
  moduleAtHand,
  moduleOn,
  modulesIn,
} from "../../../session/index.ts";
import { PlugChoice } from "../../panels/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { CommandButton } from "../command-button.tsx";
import { Button } from "../controls/index.ts";
import { goTo } from "../go-to.ts";
import { LeftOver } from "./left-over.tsx";
import styles from "./match-panel.module.css";
import { ModuleChoice } from "./module-choice.tsx";
import { ModuleMatches } from "./module-matches.tsx";

/** Which pin sits in which cavity: picked here, dragged across the boards, or proposed by marks. */
export function MatchPanel() {
  const session = useSession();
  const job = useSelected(drawnOf);
  const plug = useSelected((state) => state.plug);
  const showMatches = useSelected((state) => state.showMatches);
  const atHand = useSelected(moduleAtHand);
  const module = modulesIn(job.diagram.parts).find(({ id }) => id === atHand);
  const propose = commandNamed("match-by-marks");
  const toggle = commandNamed("toggle-matches");
  const onPlug = (id: Id) => {
    const there = moduleOn(job, id);
    if (there) goTo(session, there);
    session.show({ plug: id, module: there ?? atHand });
  };
  return (
    <section className={styles.panel} aria-label="Match">
      <h2>Match pins to cavities</h2>
      <p className={styles.lead}>
        Drag from a pin to its cavity across the boards, or pick here. A mark on the diagram and a
        mark on the plug can differ: the wire in the cavity decides.
      </p>
      <div className={styles.atHand}>
        <ModuleChoice module={atHand} />
        <PlugChoice className={styles.plug} plug={plug ?? ""} onPlug={onPlug} />
      </div>
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
      {module ? (
        <ModuleMatches key={module.id} module={module} />
      ) : (
        <p>No module on the diagram yet: its pins are what gets tied.</p>
      )}
      <LeftOver job={job} plug={plug} onPlug={onPlug} />
    </section>
  );
}
