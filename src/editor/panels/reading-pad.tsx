import { ArrowUpDown, Gauge, X } from "lucide-react";
import { type FormEvent, useEffect, useRef } from "react";
import { echoQuantity, parseQuantity, unitOf } from "../../base/index.ts";
import { phrasesForWhen } from "../../readings/index.ts";
import {
  keepReading,
  lacking,
  newDraft,
  placeProbe,
  questionDeskOf,
  type ReadingDraft,
  readingOf,
  swapLeads,
} from "../../session/index.ts";
import { LabelledField } from "../app/commit-field.tsx";
import { Button } from "../app/controls/index.ts";
import { useAnswer, useSelected, useSession } from "../session-context.tsx";
import { Keypad } from "./keypad.tsx";
import { LeadField } from "./lead-field.tsx";
import { localTime } from "./local-time.ts";
import { ReadingConditions } from "./reading-conditions.tsx";
import { ReadingCautions, ReadingExpectation, RefusedMethod } from "./reading-expectation.tsx";
import styles from "./reading-pad.module.css";
import { Segments } from "./segments.tsx";
import { setupQuestion } from "./setup-question.ts";
import { isWorthKeeping, putAside, rememberLive } from "./unfinished.ts";
import { UnfinishedReadings } from "./unfinished-readings.tsx";
import { WhatMoves } from "./what-moves.tsx";

const QUANTITIES = [
  { value: "volts", text: "Volts" },
  { value: "ohms", text: "Ohms" },
  { value: "amps", text: "Amps" },
  { value: "drop", text: "Drop" },
] as const;

const INSTRUMENTS = [
  { value: "meter", text: "meter alone" },
  { value: "test-lamp", text: "test lamp as load" },
] as const;

/** Where a reading is entered, one-handed: closed it offers to begin one, and gives back what was left. */
export function ReadingPad() {
  const session = useSession();
  const draft = useSelected((state) => state.draft);
  const chosen = useSelected((state) => state.selection[0] ?? null);
  const plugs = useSelected((state) => state.job.plugs);
  const key = useSelected((state) => state.key);
  const machine = useSelected((state) => state.machine);

  // Remembered at every keystroke: a closed tab or a flat battery loses nothing.
  useEffect(() => {
    if (draft) rememberLive(key, isWorthKeeping(draft) ? { ...draft, machine } : null);
  }, [key, machine, draft]);

  if (draft) return <OpenPad draft={draft} />;
  const at = plugs.some((plug) => chosen?.startsWith(`${plug.id}:`)) ? chosen : null;
  return (
    <section className={styles.pad} aria-label="Reading pad">
      <Button
        tone="primary"
        icon={<Gauge aria-hidden />}
        onClick={() => session.show({ draft: newDraft(at) })}
      >
        Enter a reading
      </Button>
      <UnfinishedReadings />
    </section>
  );
}

function OpenPad({ draft }: { draft: ReadingDraft }) {
  const session = useSession();
  const job = useSelected((state) => state.job);
  const machineId = useSelected((state) => state.machine);
  const jobKey = useSelected((state) => state.key);
  const machine = job.machines.find((one) => one.id === machineId);
  const change = (next: Partial<ReadingDraft>) => session.show({ draft: { ...draft, ...next } });
  const question = setupQuestion(draft);
  const warned = useAnswer(question) !== null;
  // Nothing is kept whose warnings nobody could have read yet.
  const missing = lacking(draft) ?? (question && !warned ? "Working out what to mind…" : null);

  const close = () => {
    if (isWorthKeeping(draft)) putAside(jobKey, { ...draft, machine: machineId });
    else rememberLive(jobKey, null);
    session.show({ draft: null });
  };
  const keep = (event: FormEvent) => {
    event.preventDefault();
    // Enter in the note's field commits it first: what counts is the draft as it is now.
    const now = session.get();
    if (!now.draft) return;
    const minds = setupQuestion(now.draft);
    if (minds && questionDeskOf(session).answer(minds) === null) return;
    const before = machine?.readings.find((one) => one.id === now.draft?.mends);
    const reading = readingOf(now.draft, now.job, before?.at ?? localTime(new Date()));
    if (!reading) return;
    const label = before ? `Mend reading ${reading.id}` : `Keep reading ${reading.id}`;
    session.edit(label, (next) => keepReading(next, machineId, reading));
    rememberLive(jobKey, null);
    session.show({ draft: null, selection: [reading.id] });
  };
  const title = draft.mends ? `Reading ${draft.mends}` : "Reading";
  const pad = useRef<HTMLElement>(null);
  // What stands above it is not what one is at now: the keypad comes up with the pad.
  useEffect(() => {
    pad.current?.scrollIntoView?.({ block: "start" });
  }, []);
  return (
    <section ref={pad} className={styles.pad} aria-label="Reading pad">
      <header className={styles.head}>
        <h2>{title}</h2>
        <span className={styles.machine}>on {machine?.name ?? "no machine"}</span>
        <Button tone="quiet" icon={<X aria-hidden />} aria-label="Close the pad" onClick={close} />
      </header>
      <form className={styles.form} onSubmit={keep}>
        <Segments
          label="Measure"
          bare
          value={draft.quantity}
          options={QUANTITIES}
          onChange={(quantity) => change({ quantity })}
        />
        <Leads draft={draft} change={change} />
        <p className={styles.summary}>
          {[
            ...(draft.with === "test-lamp" ? ["test lamp as load"] : []),
            ...phrasesForWhen(job, draft.when),
          ].join(" · ") || "Everything at rest and plugged in"}
        </p>
        <div className={styles.watch}>
          <WhatMoves job={job} machine={machineId} draft={draft} />
          <RefusedMethod draft={draft} />
        </div>
        <Display draft={draft} change={change} />
        <Keypad
          quantity={draft.quantity}
          value={draft.value}
          onChange={(value) => change({ value })}
        />
        <Button type="submit" tone="primary" className={styles.keep} disabled={missing !== null}>
          {missing ?? (draft.mends ? "Keep the change" : "Keep this reading")}
        </Button>
        <ReadingExpectation job={job} machine={machineId} draft={draft} />
        <ReadingCautions draft={draft} />
        <Segments
          label="With"
          value={draft.with}
          options={INSTRUMENTS}
          onChange={(instrument) => change({ with: instrument })}
        />
        <ReadingConditions job={job} when={draft.when} onChange={(when) => change({ when })} />
        <LabelledField
          label="Note"
          className={styles.note}
          value={draft.note}
          mayBeEmpty
          live
          onCommit={(note) => change({ note })}
        />
      </form>
    </section>
  );
}

interface DraftProps {
  draft: ReadingDraft;
  change: (next: Partial<ReadingDraft>) => void;
}

function Leads({ draft, change }: DraftProps) {
  return (
    <fieldset className={styles.leads}>
      <legend>Leads</legend>
      {(["red", "black"] as const).map((lead) => (
        <LeadField
          key={lead}
          lead={lead}
          probe={draft[lead]}
          asking={draft.asks === lead}
          onAsk={() => change({ asks: lead })}
          onPick={(picked) => change(placeProbe({ ...draft, asks: lead }, picked))}
        />
      ))}
      <Button
        className={styles.swap}
        icon={<ArrowUpDown aria-hidden />}
        aria-label="Swap the leads"
        onClick={() => change(swapLeads(draft))}
      />
    </fieldset>
  );
}

/** What is typed and, in full with its unit, what it is taken for. */
function Display({ draft, change }: DraftProps) {
  const field = useValueFocus(draft);
  const parsed = parseQuantity(draft.value, draft.quantity);
  const problem =
    !parsed.ok && draft.value.trim() !== "" ? (parsed.issues[0]?.message ?? null) : null;
  return (
    <div className={styles.display} data-problem={problem !== null}>
      <input
        ref={field}
        aria-label={`Value in ${draft.quantity === "drop" ? "volts" : draft.quantity}`}
        // The keypad stands in for the device's own, which would cover half the screen.
        inputMode="none"
        autoComplete="off"
        value={draft.value}
        onChange={(event) => change({ value: event.target.value })}
      />
      <output aria-label="Taken for">
        {parsed.ok ? echoQuantity(parsed.value, draft.quantity) : unitOf(draft.quantity)}
      </output>
      {problem !== null && (
        <p className={styles.problem} role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}

/**
 * Once a board has placed the last lead, what is typed next is the value. Not by touch: there the
 * keypad is under the thumb, and some devices would raise their own.
 */
function useValueFocus(draft: ReadingDraft) {
  const field = useRef<HTMLInputElement>(null);
  const asked = useRef(draft.asks);
  useEffect(() => {
    const isPlaced = asked.current !== null && draft.asks === null;
    asked.current = draft.asks;
    if (isPlaced && !matchMedia("(pointer: coarse)").matches) field.current?.focus();
  }, [draft.asks]);
  return field;
}
