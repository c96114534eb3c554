import { useEffect, useState } from "react";
import type { PlaceId } from "../../session/index.ts";
import { FindingsPanel, OperatePanel } from "../panels/index.ts";
import { useSelected } from "../session-context.tsx";
import { PinTable } from "../table/index.ts";
import { StationPanel, useOperating } from "./aside.tsx";
import { onAskedWhatWorks } from "./ask-what-works.ts";
import { Boundary } from "./boundary.tsx";
import styles from "./upright-dock.module.css";

type Tab = "table" | "station" | "findings";

const STATION_TABS: Readonly<Partial<Record<PlaceId, string>>> = {
  diagram: "Parts",
  plug: "Cavity",
  match: "Match",
  prove: "Reading",
};

/** On a tablet held upright: table, station panel and findings share the room under the boards. */
export function UprightDock() {
  const station = useSelected((state) => state.station);
  const operating = useOperating();
  const [shown, setShown] = useState<{ tab: Tab; station: PlaceId } | null>(null);
  useEffect(() => onAskedWhatWorks(() => setShown(null)), []);
  const stationTab = STATION_TABS[station];
  if (operating) {
    return (
      <section className={styles.dock} aria-label="Under the boards">
        <div className={styles.body}>
          <Boundary name="This panel">
            <OperatePanel />
          </Boundary>
        </div>
      </section>
    );
  }
  // Going to a station brings its panel forward; after that the user's choice of tab holds.
  const arrived: Tab = stationTab ? "station" : station === "pins" ? "table" : "findings";
  const tab = shown?.station === station ? shown.tab : arrived;
  const tabs: readonly { tab: Tab; text: string }[] = [
    { tab: "table", text: "Pins" },
    ...(stationTab ? [{ tab: "station" as const, text: stationTab }] : []),
    { tab: "findings", text: "Findings" },
  ];
  return (
    <section className={styles.dock} aria-label="Under the boards">
      <div className={styles.tabs} role="tablist" aria-label="Under the boards">
        {tabs.map((one) => (
          <button
            key={one.tab}
            type="button"
            role="tab"
            aria-selected={one.tab === tab}
            onClick={() => setShown({ tab: one.tab, station })}
          >
            {one.text}
          </button>
        ))}
      </div>
      <div
        className={styles.body}
        role="tabpanel"
        aria-label={tabs.find((one) => one.tab === tab)?.text}
      >
        <Boundary key={`${tab} ${station}`} name="This panel">
          {tab === "table" && <PinTable />}
          {tab === "station" && <StationPanel station={station} />}
          {tab === "findings" && <FindingsPanel />}
        </Boundary>
      </div>
    </section>
  );
}
