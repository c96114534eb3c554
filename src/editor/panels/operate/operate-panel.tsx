import { RotateCcw, X } from "lucide-react";
import { useState } from "react";
import { commandNamed } from "../../../session/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useForm } from "../../app/use-layout.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { Blown } from "./blown.tsx";
import { ChosenCard } from "./chosen-card.tsx";
import { ControlsTab } from "./controls-tab.tsx";
import { Legend } from "./legend.tsx";
import { MeasureTab } from "./measure-tab.tsx";
import { Hindrances, News } from "./news.tsx";
import styles from "./operate-panel.module.css";
import { PutAside } from "./put-aside.tsx";
import { BriefSafety, Safety } from "./safety.tsx";
import { StepsTab } from "./steps-tab.tsx";

const TABS = [
  { id: "controls", text: "Controls" },
  { id: "measure", text: "Measure" },
  { id: "steps", text: "Steps" },
  { id: "legend", text: "Legend" },
] as const;

type TabId = (typeof TABS)[number]["id"];

interface OperatePanelProps {
  /** Where no bar of the diagram board is in sight that ends it. */
  stops?: boolean;
}

/** Everything about the machine that is being operated on the drawing, beside or under the board. */
export function OperatePanel({ stops = false }: OperatePanelProps) {
  const session = useSession();
  const replaying = useSelected((state) => state.operate.replay !== null);
  const idle = useSelected((state) => state.operate.played.length === 0);
  const chief = useSelected((state) => state.selection[0]);
  const phone = useForm() === "phone";
  const [chosen, setChosen] = useState<TabId>(replaying ? "steps" : "controls");
  return (
    <section className={styles.panel} aria-label="Operate">
      <header className={styles.head}>
        {phone ? <BriefSafety /> : <h2>Operating</h2>}
        <Button
          tone="quiet"
          icon={<RotateCcw aria-hidden />}
          aria-label="Start over"
          disabled={idle}
          onClick={() => commandNamed("start-over").run(session)}
        >
          {phone ? null : "Start over"}
        </Button>
        {stops && (
          <Button
            tone="primary"
            icon={<X aria-hidden />}
            aria-label="Stop operating"
            onClick={() => commandNamed("stop-operating").run(session)}
          >
            Stop
          </Button>
        )}
      </header>
      {phone && <ChosenCard of={chief} acts closes />}
      {!phone && <Safety />}
      <Hindrances />
      <PutAside />
      <div className={styles.stays}>
        <Blown />
        <News brief={phone} onMore={() => setChosen("steps")} />
        <div className={styles.tabs} role="tablist" aria-label="Operate">
          {TABS.map(({ id, text }) => (
            <button
              key={id}
              type="button"
              role="tab"
              id={`operate-tab-${id}`}
              aria-controls={id === chosen ? `operate-panel-${id}` : undefined}
              aria-selected={id === chosen}
              onClick={() => setChosen(id)}
            >
              {text}
            </button>
          ))}
        </div>
      </div>
      <div
        className={styles.body}
        role="tabpanel"
        id={`operate-panel-${chosen}`}
        aria-labelledby={`operate-tab-${chosen}`}
      >
        {chosen === "controls" && <ControlsTab />}
        {chosen === "measure" && <MeasureTab />}
        {chosen === "steps" && <StepsTab />}
        {chosen === "legend" && <Legend />}
      </div>
    </section>
  );
}
