import { ChevronDown } from "lucide-react";
import { useMemo } from "react";
import { type Id, type Job, type PartOf, pinRef } from "../../../job/index.ts";
import { drawnOf, modulesIn, plugOf, tiedTo } from "../../../session/index.ts";
import { type Choice, ChoiceList, ChoicePopover } from "../../panels/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { goTo } from "../go-to.ts";
import styles from "./match-panel.module.css";

/** Which module of the drawing is being matched; nothing where there is only one. */
export function ModuleChoice({ module }: { module: Id | null }) {
  const job = useSelected(drawnOf);
  const modules = modulesIn(job.diagram.parts);
  const atHand = modules.find(({ id }) => id === module);
  if (modules.length < 2 || !atHand) return null;
  return (
    <ChoicePopover
      name="Modules"
      button={
        <button
          type="button"
          className={styles.opener}
          aria-label={`Module at hand: ${nameOf(atHand)}. Choose another`}
        >
          <span>Module {nameOf(atHand)}</span>
          <ChevronDown aria-hidden size={20} />
        </button>
      }
    >
      {(close) => <Modules module={module} onDone={close} />}
    </ChoicePopover>
  );
}

function Modules({ module, onDone }: { module: Id | null; onDone: () => void }) {
  const session = useSession();
  const job = useSelected(drawnOf);
  const choices = useMemo(() => choicesOf(job, module), [job, module]);
  const choose = (id: Id) => {
    const plug = plugOf(job, id);
    goTo(session, id);
    session.show({ module: id, ...(plug ? { plug } : {}) });
    onDone();
  };
  return (
    <ChoiceList
      choices={choices}
      name="Modules"
      search="Search for a module"
      placeholder="Module"
      none="No module of that name."
      onChoose={choose}
    />
  );
}

export const nameOf = ({ id, label }: PartOf<"module">) => (label ? `${id} · ${label}` : id);

function choicesOf(job: Job, chosen: Id | null): readonly Choice[] {
  const ties = tiedTo(job);
  return modulesIn(job.diagram.parts).map((module) => {
    const tied = module.pins.filter((pin) => ties.has(pinRef(module.id, pin.id))).length;
    return {
      id: module.id,
      text: nameOf(module),
      under: module.pins.length === 0 ? "no pins" : `${tied} of ${module.pins.length} tied`,
      chosen: module.id === chosen,
    };
  });
}
