import { useMemo } from "react";
import { circuitOf, kindOf } from "../../circuit/index.ts";
import type { Id, Job } from "../../job/index.ts";
import type { ReadingDraft } from "../../session/index.ts";
import { useAnswer } from "../session-context.tsx";
import styles from "./reading-pad.module.css";
import { setupQuestion } from "./setup-question.ts";
import { StatusShape } from "./status-shape.tsx";
import { Working } from "./working.tsx";

interface WhatMovesProps {
  job: Job;
  machine: Id;
  draft: ReadingDraft;
}

/** What will move or come on while the reading is taken, as solved: to be read before it is. */
export function WhatMoves({ job, machine, draft }: WhatMovesProps) {
  const question = setupQuestion(draft);
  const answer = useAnswer(question);
  const name = useMemo(() => namer(job, machine), [job, machine]);
  if (question === null) return null;
  if (answer === null) {
    return (
      <div className={styles.moves} data-acting={false} role="status">
        <Working>
          Working out what will move and whether this is a valid reading. Wait for it: until then,
          anything may move.
        </Working>
      </div>
    );
  }
  if (answer.moves === null) return null;
  const { moves, stateMoves, unknown } = answer.moves;
  const { quantity } = draft;
  const acting = moves.length > 0 || stateMoves.length > 0;
  const tool = quantity === "amps" ? "ammeter" : "test lamp";
  return (
    <div className={styles.moves} data-acting={acting} role="status">
      {acting && <StatusShape status="warning" />}
      <div>
        {!acting && <p>As drawn, nothing moves or comes on.</p>}
        {moves.length > 0 && (
          <p>
            The {tool} will move or bring on: <strong>{name(moves)}</strong>.
          </p>
        )}
        {stateMoves.length > 0 && (
          <p>
            This state will move or bring on: <strong>{name(stateMoves)}</strong>.
          </p>
        )}
        {unknown.length > 0 && <p>What {few(unknown)} drives is not known and may come besides.</p>}
        {acting && <p>Attachments down, pressure off, nobody within reach before you go on.</p>}
      </div>
    </div>
  );
}

/** Modules that are named one by one, at most. */
const MOST_NAMED = 4;

const few = (ids: readonly Id[]): string =>
  ids.length <= MOST_NAMED
    ? ids.join(", ")
    : `${ids.slice(0, MOST_NAMED).join(", ")} or one of ${ids.length - MOST_NAMED} other modules`;

/** `relay K1 starter relay, motor M2`. */
function namer(job: Job, machine: Id): (ids: readonly Id[]) => string {
  const parts = new Map(circuitOf(job, machine).parts.map((part) => [part.id, part]));
  return (ids) =>
    ids
      .map((id) => {
        const part = parts.get(id);
        return part ? [kindOf(part.kind).title, id, part.label].filter(Boolean).join(" ") : id;
      })
      .join(", ");
}
