import { ChevronDown, Shapes } from "lucide-react";
import { Popover } from "radix-ui";
import { useState } from "react";
import { KINDS, kindOf } from "../../../circuit/index.ts";
import type { PartKindName } from "../../../job/index.ts";
import { Button } from "../../app/controls/index.ts";
import { useSelected, useSession } from "../../session-context.tsx";
import { useBoard, useBoardState } from "./board-context.tsx";
import styles from "./part-palette.module.css";
import { PartSymbol } from "./part-symbol.tsx";
import { usePaletteDrag } from "./use-palette-drag.ts";

/** Every kind, by what a mechanic is after. A kind that no group names is still offered, at the end. */
const GROUPS: readonly { readonly title: string; readonly kinds: readonly PartKindName[] }[] = [
  { title: "The module", kinds: ["module"] },
  {
    title: "Feed and ground",
    kinds: ["battery", "ground", "fuse", "breaker", "alternator", "converter"],
  },
  { title: "Switching", kinds: ["switch", "relay"] },
  { title: "Loads", kinds: ["lamp", "solenoid", "motor", "heater", "horn"] },
  { title: "Sensing", kinds: ["sender", "sensor", "potentiometer", "resistor", "diode"] },
  { title: "Lines", kinds: ["splice", "inline", "offpage"] },
];

/** Other words that people look a part up by. */
const ALSO: Readonly<Partial<Record<PartKindName, string>>> = {
  ground: "earth chassis frame",
  module: "controller unit ecu box",
  lamp: "light bulb led",
  solenoid: "valve coil",
  motor: "pump fan",
  breaker: "circuit cut-out",
  switch: "key button contact isolator seat pressure",
  relay: "contactor",
  splice: "joint join",
  inline: "connector plug",
  offpage: "goes on continues",
  sender: "gauge temperature level",
  sensor: "proximity",
  potentiometer: "pedal wiper",
  heater: "glow plug",
};

function groupsFor(words: string) {
  const grouped = new Set(GROUPS.flatMap((group) => group.kinds));
  const rest = (Object.keys(KINDS) as PartKindName[]).filter((kind) => !grouped.has(kind));
  const all = rest.length === 0 ? GROUPS : [...GROUPS, { title: "More", kinds: rest }];
  const wanted = words.trim().toLowerCase();
  const matches = (kind: PartKindName) =>
    `${kindOf(kind).title} ${kind} ${ALSO[kind] ?? ""}`.toLowerCase().includes(wanted);
  return all
    .map((group) => ({ ...group, kinds: group.kinds.filter(matches) }))
    .filter((group) => group.kinds.length > 0);
}

/** Opens the list of parts; a choice arms the pointer, a drag lays the part down where it ends. */
export function PartPalette() {
  const board = useBoard();
  const session = useSession();
  const open = useBoardState((state) => state.paletteOpen);
  const tool = useSelected((state) => state.tool);
  const [words, setWords] = useState("");
  const setOpen = (next: boolean) => {
    if (next) setWords("");
    board.show({ paletteOpen: next });
  };
  const arm = (kind: PartKindName) => {
    session.show({ tool: { name: "place", kind } });
    setOpen(false);
  };
  const drag = usePaletteDrag(() => setOpen(false));
  const groups = groupsFor(words);
  const armed = tool.name === "place" ? (tool.kind as PartKindName) : null;
  return (
    <Popover.Root open={open} onOpenChange={setOpen}>
      <Popover.Trigger asChild>
        <Button
          tone="quiet"
          icon={armed ? <PartSymbol kind={armed} size={24} /> : <Shapes aria-hidden />}
          aria-pressed={armed !== null}
        >
          {armed ? kindOf(armed).title : "Parts"}
          <ChevronDown aria-hidden />
        </Button>
      </Popover.Trigger>
      <Popover.Portal>
        <Popover.Content
          className={styles.palette}
          align="start"
          sideOffset={6}
          collisionPadding={8}
          aria-label="Parts"
        >
          <input
            className={styles.search}
            type="search"
            aria-label="Find a part"
            placeholder="Find a part"
            value={words}
            onChange={(event) => setWords(event.target.value)}
            onKeyDown={(event) => {
              const first = groups[0]?.kinds[0];
              if (event.key === "Enter" && first) arm(first);
            }}
          />
          <div className={styles.groups}>
            {groups.map((group) => (
              <section key={group.title} aria-label={group.title}>
                <h3 className={styles.title}>{group.title}</h3>
                <div className={styles.kinds}>
                  {group.kinds.map((kind) => (
                    <button
                      key={kind}
                      type="button"
                      className={styles.kind}
                      onPointerDown={(event) => drag(kind, event)}
                      onClick={() => arm(kind)}
                    >
                      <PartSymbol kind={kind} />
                      {kindOf(kind).title}
                    </button>
                  ))}
                </div>
              </section>
            ))}
            {groups.length === 0 && <p className={styles.none}>No part is called that.</p>}
          </div>
        </Popover.Content>
      </Popover.Portal>
    </Popover.Root>
  );
}
