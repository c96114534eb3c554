import { useState } from "react";
import { formatQuantity } from "../../base/index.ts";
import { circuitOf, kindOf } from "../../circuit/index.ts";
import type { CavityRef, Id } from "../../job/index.ts";
import {
  cautionsFor,
  type DropLeg,
  type DropRead,
  phrasesForWhen,
  WHO_COMES_FIRST,
} from "../../readings/index.ts";
import { capital } from "../../roles/index.ts";
import { USUAL_DROP_NAMES, USUAL_DROPS, USUAL_DROPS_SOURCE } from "../../standards/index.ts";
import { useAnswer, useSelected } from "../session-context.tsx";
import styles from "./drop-along.module.css";
import { StatusShape } from "./status-shape.tsx";
import { Working } from "./working.tsx";

/** What drops along the way of a load's current, or through a cavity, beside what is usual; asked for by opening it. */
export function DropAlong({ of }: { of: Id | CavityRef }) {
  const [open, setOpen] = useState(false);
  return (
    <details className={styles.drops} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Drop along the way</summary>
      {open && <Ways of={of} />}
    </details>
  );
}

function Ways({ of }: { of: Id | CavityRef }) {
  const job = useSelected((state) => state.job);
  const operated = useSelected((state) => state.operate.live?.when ?? null);
  const answer = useAnswer({ about: "drops", of, when: operated });
  if (answer === null) return <Working />;
  const { legs, amps, why, when, moves } = answer;
  if (when === null || why !== null) return <p className={styles.none}>{why}</p>;
  const phrases = phrasesForWhen(job, when);
  const acting = moves?.stateMoves ?? [];
  return (
    <>
      <p>
        With {phrases.length === 0 ? "all at rest" : phrases.join(" and ")}:{" "}
        <strong>{formatQuantity(amps, "amps")}</strong>, as drawn.
      </p>
      {acting.length > 0 && (
        <p className={styles.moves}>
          <StatusShape status="warning" />
          <span>
            This state will move or bring on <strong>{acting.join(", ")}</strong>. Attachments down,
            pressure off, nobody within reach.
          </span>
        </p>
      )}
      <ol className={styles.legs} aria-label="Legs of the way">
        {legs.map((leg) => (
          <Leg key={`${leg.is} ${leg.ids.join()} ${leg.red}`} leg={leg} />
        ))}
      </ol>
      <p className={styles.source}>
        Usual limits: {USUAL_DROPS_SOURCE}. A small connection should drop nothing that a meter
        shows; which is a small one no source says. Nothing is drawn to lie across a joint: meter it
        from the wire on one side to the wire on the other.
      </p>
      <ul className={styles.source}>
        {cautionsFor({ quantity: "drop", when }).map((text) => (
          <li key={text}>{text}</li>
        ))}
        <li>{WHO_COMES_FIRST}</li>
      </ul>
    </>
  );
}

function Leg({ leg }: { leg: DropLeg }) {
  const name = useLegName(leg);
  const { drop, limit, red, black, read } = leg;
  const most = limit === null ? null : USUAL_DROPS[limit];
  return (
    <li>
      <p className={styles.name}>
        <strong>{name}</strong>
        {red !== black && (
          <span>
            {red} to {black}
          </span>
        )}
      </p>
      <p>
        {drop === null ? UNKNOWN[leg.is] : `drops about ${drop.about.toFixed(2)} V while good`}
        {limit !== null && most !== null && (
          <span className={styles.limit}>
            usual limit {formatQuantity(most, "drop")} ({USUAL_DROP_NAMES[limit]})
          </span>
        )}
      </p>
      {drop !== null && most !== null && drop.least > most && (
        <p className={styles.moves}>
          <StatusShape status="warning" />
          <span>More than usual even when it is good: too long or too thin, as drawn.</span>
        </p>
      )}
      {read.map((one) => (
        <Read key={one.reading} read={one} />
      ))}
    </li>
  );
}

function Read({ read: { reading, volts, withinLimit } }: { read: DropRead }) {
  return (
    <p className={styles.moves}>
      {withinLimit !== null && <StatusShape status={withinLimit ? "agrees" : "warning"} />}
      <span>
        {reading} read {formatQuantity(volts, "drop")}
        {withinLimit === null ? "" : withinLimit ? ": within the usual limit" : ": more than usual"}
      </span>
    </p>
  );
}

const UNKNOWN: Readonly<Record<DropLeg["is"], string>> = {
  wire: "size, length or what it carries not known",
  "ground-path": "size, length or what it carries not known",
  fuse: "its ohms or what it carries not known",
  contacts: "its ohms or what it carries not known",
  joint: "",
  load: "takes the rest: it does the work",
  other: "what it drops is not reckoned",
};

const LEG_NAMES: Readonly<Partial<Record<DropLeg["is"], string>>> = {
  wire: "Wire",
  joint: "Joint",
  "ground-path": "Ground path",
};

/** `Wire W3`, `Fuse F1 pump`, `Ground path W5, W6`. */
function useLegName({ is, ids }: DropLeg): string {
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  const known = LEG_NAMES[is];
  if (known !== undefined) return `${known} ${ids.join(", ")}`;
  const part = circuitOf(job, machine).parts.find(({ id }) => id === ids[0]);
  if (!part) return ids.join(", ");
  const title = kindOf(part.kind).title;
  const name = `${capital(title)} ${part.id}`;
  return part.label ? `${name} ${part.label}` : name;
}
