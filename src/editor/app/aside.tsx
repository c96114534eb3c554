import { useLayoutEffect, useRef } from "react";
import type { PlaceId } from "../../session/index.ts";
import { DiagramList, PartDetails } from "../boards/diagram/index.ts";
import { CavityDetails } from "../boards/plug/index.ts";
import {
  ChangesPanel,
  ConductorsPanel,
  FindingsPanel,
  FirstChecks,
  OperatePanel,
  ReadingPad,
  ReadingsList,
  TrialsPanel,
} from "../panels/index.ts";
import { useSelected } from "../session-context.tsx";
import styles from "./aside.module.css";
import { Boundary } from "./boundary.tsx";
import { MatchPanel } from "./match/match-panel.tsx";

/** What belongs to the station at hand, besides the boards. */
export function StationPanel({ station }: { station: PlaceId }) {
  const selecting = useSelected((state) => state.selection.length > 0);
  switch (station) {
    case "diagram":
      if (selecting) return <PartDetails />;
      return (
        <>
          <ChangesPanel />
          <ConductorsPanel />
          <DiagramList />
        </>
      );
    case "plug":
      return <CavityDetails />;
    case "match":
      return <MatchPanel />;
    case "prove":
      return (
        <>
          <FirstChecks />
          <TrialsPanel />
          <ReadingPad />
          <ReadingsList />
        </>
      );
    case "pins":
    case "check":
    case "sheet":
      return null;
  }
}

/** Beside the boards: the station's own panel, and the findings, which are always there. */
export function Aside() {
  const station = useSelected((state) => state.station);
  const operating = useOperating();
  const aside = useRef<HTMLElement>(null);
  // Another panel begins at its top, wherever one had scrolled to in the one before.
  // biome-ignore lint/correctness/useExhaustiveDependencies: they say when, and are not read
  useLayoutEffect(() => {
    if (aside.current) aside.current.scrollTop = 0;
  }, [station, operating]);
  if (operating) {
    return (
      <aside ref={aside} className={styles.aside} aria-label="Beside the boards">
        <Boundary name="This panel">
          <OperatePanel />
        </Boundary>
      </aside>
    );
  }
  return (
    <aside ref={aside} className={styles.aside} aria-label="Beside the boards">
      <Boundary key={station} name="This panel">
        <StationPanel station={station} />
      </Boundary>
      <Boundary name="The list of findings">
        <FindingsPanel />
      </Boundary>
    </aside>
  );
}

/** The machine on the boards is being operated, and no reading is being entered meanwhile. */
export const useOperating = () => useSelected((state) => state.operate.on && state.draft === null);
