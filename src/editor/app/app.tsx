import { useEffect, useMemo, useState } from "react";
import {
  type PlaceId,
  pictureFileOf,
  type SessionState,
  stopOperating,
} from "../../session/index.ts";
import { PagePicker } from "../import/index.ts";
import { LinkOverlay } from "../link-drag.tsx";
import { useAnalysisReady, useSelected, useSession } from "../session-context.tsx";
import styles from "./app.module.css";
import { appCommands } from "./app-commands.ts";
import { Aside, useOperating } from "./aside.tsx";
import { Boards } from "./boards.tsx";
import { Boundary } from "./boundary.tsx";
import { CheckingMark } from "./checking-mark.tsx";
import { TipProvider } from "./controls/index.ts";
import { Dialogs } from "./dialogs.tsx";
import { DropZone } from "./drop-zone.tsx";
import { NO_JOB } from "./job-desk.ts";
import { useJobDesk } from "./job-desk-context.tsx";
import { PhoneNav } from "./phone-nav.tsx";
import { PhoneScreen } from "./phone-screen.tsx";

import { ProbeBar } from "./probe-bar.tsx";
import { StationPath } from "./station-path.tsx";
import { StatusLine } from "./status-line.tsx";
import { TableDock } from "./table-dock.tsx";
import { TopBar } from "./top-bar.tsx";
import { UprightDock } from "./upright-dock.tsx";
import { useClipboard } from "./use-clipboard.ts";
import { useIncomingFiles } from "./use-incoming-files.ts";
import { useKeyboard } from "./use-keyboard.ts";
import { type TableHeight, useCramped, useForm, useNarrow, useSizes } from "./use-layout.ts";
import { useReadingStation } from "./use-reading-station.ts";

/** The boards, once there is a job to show on them. */
export function App() {
  const opened = useSelected((state) => state.key !== NO_JOB);
  const title = useSelected((state) => state.job.title);
  useEffect(() => {
    document.title = opened ? `${title} · Pintruth` : "Pintruth";
  }, [opened, title]);
  const ready = useAnalysisReady();
  if (!opened) return <p className={styles.opening}>Opening the job…</p>;
  return ready ? <Desk /> : <p className={styles.opening}>Checking the job…</p>;
}

/** Stations that are nothing without their own panel. */
const WITH_PANEL: readonly PlaceId[] = ["match", "check", "prove"];

/** Where nothing is done at the plug. */
const AT_DIAGRAM: readonly PlaceId[] = ["pins", "diagram"];

const hasNoPins = ({ job }: SessionState): boolean =>
  job.plugs.every(({ cavities }) => cavities.length === 0) &&
  job.diagram.parts.every((part) => part.kind !== "module" || part.pins.length === 0);

function Desk() {
  const session = useSession();
  const form = useForm();
  const sizes = useSizes();
  const stacked = form === "upright";
  const place = useSelected((state) => state.station);
  const operating = useOperating();
  const reading = useSelected((state) => state.draft !== null);
  const narrow = useNarrow();
  const cramped = useCramped();
  // A machine being operated wants room for its drawing, a picture being traced for itself, and a
  // reading for its keypad where the table would take it; the height chosen for other work stays.
  const [busyTable, setBusyTable] = useState<TableHeight>("low");
  // One sentence stands where there are no pins yet: the boards have the better use for the room. With
  // the first pin the table stays as it is, or the board would jump under who draws it.
  const key = useSelected((state) => state.key);
  const empty = useSelected(hasNoPins);
  const [begunEmpty, setBegunEmpty] = useState<string | null>(null);
  if (empty && begunEmpty !== key) setBegunEmpty(key);
  const scanning = useSelected((state) => state.scanDesk && pictureFileOf(state) !== null);
  const busy = operating || scanning || begunEmpty === key || (reading && narrow);
  const table = busy ? busyTable : sizes.table;
  const setTable = (next: TableHeight) =>
    busy ? setBusyTable(next) : sizes.change({ table: next });
  const desk = useJobDesk();
  const commands = useMemo(() => appCommands(desk), [desk]);
  const takeFiles = useIncomingFiles();
  useKeyboard(commands);
  useClipboard(commands, takeFiles);

  const go = (to: PlaceId) => session.show(to === "sheet" ? { dialog: "sheet" } : { station: to });

  // Their panel stands where the operating has its own: who presses one is done with it for now.
  const goToStation = (to: PlaceId) => {
    if (operating && form !== "phone" && WITH_PANEL.includes(to)) {
      stopOperating(session);
      const text = "Stopped operating. The steps are there when you operate again.";
      session.show({ notice: { tone: "info", text } });
    }
    go(to);
  };

  useReadingStation(() => go("prove"), form === "phone");

  return (
    <TipProvider>
      <div
        className={styles.app}
        data-form={form}
        data-table={form === "desk" ? table : undefined}
        data-scanning={scanning}
        data-reading={reading}
      >
        <TopBar form={form} onGo={goToStation} />
        {form === "phone" ? (
          <>
            <div className={styles.phone}>
              {place !== "prove" && <ProbeBar onBack={() => go("prove")} />}
              <Boundary key={place} name="This screen">
                <PhoneScreen place={place} onGo={go} />
              </Boundary>
            </div>
            <PhoneNav place={place} onGo={go} />
          </>
        ) : (
          <>
            <StationPath onGo={goToStation} />
            <main className={styles.main}>
              <Boards
                stacked={stacked}
                alone={scanning && AT_DIAGRAM.includes(place) && (stacked || cramped)}
                share={stacked ? sizes.stackedShare : sizes.share}
                onShare={(share) => sizes.change(stacked ? { stackedShare: share } : { share })}
              />
              {form === "desk" ? <TableDock height={table} onHeight={setTable} /> : <UprightDock />}
            </main>
            {form === "desk" && <Aside />}
          </>
        )}
      </div>
      <LinkOverlay />
      <Boundary name="This window">
        <Dialogs commands={commands} />
        <PagePicker />
      </Boundary>
      <StatusLine />
      <CheckingMark />
      <DropZone onFiles={takeFiles} />
    </TipProvider>
  );
}
