import { Copy, Replace, RotateCw, Trash2 } from "lucide-react";
import { useState } from "react";
import { doesWork, elementsOf, kindOf } from "../../../../circuit/index.ts";
import { type Job, ownerOf, type Part, type Wire } from "../../../../job/index.ts";
import {
  ALIGNMENTS,
  commandNamed,
  drawnOf,
  setPartField,
  setUnit,
  turnParts,
  unitOf,
} from "../../../../session/index.ts";
import { CommandButton } from "../../../app/command-button.tsx";
import { ConductorsPanel } from "../../../panels/conductors-panel.tsx";
import { DropAlong } from "../../../panels/drop-along.tsx";
import { useSelected, useSession } from "../../../session-context.tsx";
import { EditField } from "../../plug/fields.tsx";
import { writeWords } from "../words.ts";
import styles from "./details.module.css";
import { InlineEditor } from "./inline-editor.tsx";
import { KindFieldList } from "./kind-field-list.tsx";
import { ModuleEditor } from "./module-editor.tsx";
import { NumberField } from "./number-field.tsx";
import { SwitchEditor } from "./switch-editor.tsx";
import { WireDetails } from "./wire-details.tsx";

/** The part or wire that a selection is about: itself, or the owner of the chosen pin. */
function chosenThing(job: Job, ref: string | undefined): Part | Wire | null {
  if (ref === undefined) return null;
  const owner = ownerOf(ref);
  return (
    job.diagram.wires.find((wire) => wire.id === ref) ??
    job.diagram.parts.find((part) => part.id === owner) ??
    null
  );
}

const isPart = (thing: Part | Wire): thing is Part => "kind" in thing;

/** All that is known of what is chosen on the diagram, each field of it open to the keyboard. */
export function PartDetails() {
  const job = useSelected(drawnOf);
  const selection = useSelected((state) => state.selection);
  const thing = chosenThing(job, selection[0]);
  // The first few tell: looking each of thousands up would take longer than the eye waits.
  const several = selection.slice(0, 9).filter((ref) => chosenThing(job, ref)).length > 1;
  return (
    <section className={styles.details} aria-label="Details">
      {several ? (
        <Several count={selection.length} />
      ) : thing === null ? (
        <p className={styles.none}>Choose a part, a pin or a wire to see what is known of it.</p>
      ) : isPart(thing) ? (
        <OnePart key={thing.id} part={thing} />
      ) : (
        <OneWire key={thing.id} wire={thing} />
      )}
    </section>
  );
}

function Actions({ ids }: { ids: readonly (readonly [string, React.ReactNode])[] }) {
  const recording = useSelected((state) => state.recording !== null);
  return (
    <div className={styles.actions}>
      {ids.map(([id, icon]) =>
        id === "replace-here" && !recording ? null : (
          <CommandButton key={id} command={commandNamed(id)} icon={icon} tone="plain" />
        ),
      )}
    </div>
  );
}

const PART_ACTIONS = [
  ["turn", <RotateCw key="i" aria-hidden />],
  ["duplicate", <Copy key="i" aria-hidden />],
  ["replace-here", <Replace key="i" aria-hidden />],
  ["delete", <Trash2 key="i" aria-hidden />],
] as const;

function Several({ count }: { count: number }) {
  const session = useSession();
  return (
    <>
      <header className={styles.head}>
        <h3>{count} things</h3>
        <Actions ids={PART_ACTIONS} />
      </header>
      <div className={styles.grid}>
        {ALIGNMENTS.map((how) => {
          const command = commandNamed(`align-${how}`);
          return (
            <button
              key={how}
              type="button"
              className={styles.align}
              disabled={!command.canRun(session)}
              onClick={() => command.run(session)}
            >
              {command.label}
            </button>
          );
        })}
      </div>
    </>
  );
}

const protects = (part: Part): boolean =>
  elementsOf(part, 12).some(({ law }) => law.is === "protection");

/** Something that current does work in: there is a way to it and back. */
const isLoad = (part: Part): boolean =>
  part.kind !== "module" && elementsOf(part, 12).some(({ law }) => doesWork(law));

function OnePart({ part }: { part: Part }) {
  const session = useSession();
  const [wrong, setWrong] = useState<string | null>(null);
  const { id } = part;
  const { title } = kindOf(part.kind);
  return (
    <>
      <header className={styles.head}>
        <h3>
          {id} <span className={styles.kind}>{title}</span>
        </h3>
        <Actions ids={PART_ACTIONS} />
      </header>
      <div className={styles.grid}>
        <EditField
          label="Id"
          value={id}
          problem={wrong}
          onCommit={(next) => setWrong(writeWords(session, id, next, part.label ?? ""))}
          onUnchanged={() => setWrong(null)}
        />
        <EditField
          label="Label"
          value={part.label ?? ""}
          live
          onCommit={(label, merge) => setWrong(writeWords(session, id, id, label, merge))}
        />
        <EditField
          label={part.kind === "ground" ? "Grounded on" : "Where on the machine"}
          value={part.place ?? ""}
          placeholder={part.kind === "ground" ? "frame" : undefined}
          live
          onCommit={(place, merge) =>
            session.edit(
              `Set the place of ${id}`,
              (draft) => setPartField(draft, id, "place", place || undefined),
              merge,
            )
          }
        />
        <KindFieldList part={part} />
        {protects(part) && <ConductorsPanel />}
        {isLoad(part) && <DropAlong of={id} />}
        {part.kind === "switch" && <SwitchEditor part={part} />}
        {part.kind === "module" && <ModuleEditor part={part} />}
        {part.kind === "inline" && <InlineEditor part={part} />}
        <NumberField
          label="Turned by"
          unit="°"
          zero
          value={part.turn}
          onChange={(turn) =>
            session.edit(`Turn ${id}`, (draft) => turnParts(draft, [id], (turn ?? 0) - part.turn))
          }
        />
        <NumberField
          label="Drawn size"
          unit="px"
          value={unitOf(part)}
          onChange={(unit) =>
            unit !== undefined && session.edit(`Resize ${id}`, (draft) => setUnit(draft, id, unit))
          }
        />
      </div>
    </>
  );
}

function OneWire({ wire }: { wire: Wire }) {
  return (
    <>
      <header className={styles.head}>
        <h3>
          {wire.id} <span className={styles.kind}>wire</span>
        </h3>
        <Actions
          ids={[
            ["replace-here", <Replace key="i" aria-hidden />],
            ["delete", <Trash2 key="i" aria-hidden />],
          ]}
        />
      </header>
      <div className={styles.grid}>
        <WireDetails wire={wire} />
        <ConductorsPanel />
      </div>
    </>
  );
}
