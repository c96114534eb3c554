import type { Probe, Step } from "../../job/index.ts";
import type { Session } from "../session.ts";
import type { Leads, OperateState, PlayedStep } from "./operate-state.ts";

/** Changes what is shown of the play. Whoever keeps it going sees to the answers. */
export function showOperate(session: Session, change: Partial<OperateState>): void {
  session.show({ operate: { ...session.get().operate, ...change } });
}

/** Begins to operate, or goes on where it was left: what was done is done again. */
export function startOperating(session: Session): void {
  const { played } = session.get().operate;
  session.show({
    tool: { name: "select" },
    operate: { ...session.get().operate, on: true, failed: null, played: unanswered(played) },
  });
}

/** Puts the drawing back to be edited. The steps are remembered as long as the job is open. */
export function stopOperating(session: Session): void {
  session.show({ operate: stopped(session.get().operate) });
}

export function stopped(operate: OperateState): OperateState {
  const leads: Leads = { red: operate.leads.red, black: operate.leads.black, asks: null };
  const replay = operate.replay && { ...operate.replay, runs: false };
  return { ...operate, on: false, live: null, failed: null, replay, leads };
}

export const unanswered = (played: readonly PlayedStep[]): readonly PlayedStep[] =>
  played.map(({ step }) => ({ step, outcome: null }));

/** Does one thing by hand. A recording being gone through ends there: the hand has taken over. */
export function doStep(session: Session, step: Step): void {
  const { played } = session.get().operate;
  showOperate(session, {
    played: [...played, { step, outcome: null }],
    replay: null,
    setAside: [],
  });
}

/** Everything at rest, every fuse good, nothing done yet. */
export function startOver(session: Session): void {
  const { operate } = session.get();
  const { replay } = operate;
  showOperate(session, {
    setAside: putAside(operate),
    played: [],
    live: null,
    failed: null,
    replay: replay && { ...replay, runs: false },
  });
}

/** The machine as it was after so many of the steps; the later ones are put aside. */
export function backTo(session: Session, count: number): void {
  const { operate } = session.get();
  const played = unanswered(operate.played.slice(0, count));
  showOperate(session, { played, replay: null, setAside: putAside(operate) });
}

/**
 * What can be brought back once the steps give way to others. What lies aside already is what the
 * hand did last: since then there were only parts of it, or a recording.
 */
export const putAside = ({ played, replay, setAside }: OperateState): readonly PlayedStep[] =>
  setAside.length > 0 || replay ? setAside : unanswered(played);

/** Does the steps again that were put aside. */
export function bringBack(session: Session): void {
  const { setAside } = session.get().operate;
  showOperate(session, { played: setAside, replay: null, setAside: [] });
}

/** Places a lead of the two-lead probe; the next one to be placed is asked for. */
export function placeLead(session: Session, lead: "red" | "black", probe: Probe | null): void {
  const { leads } = session.get().operate;
  const placed = { red: leads.red, black: leads.black, [lead]: probe };
  const asks = lead === "red" && placed.black === null && probe !== null ? "black" : null;
  showOperate(session, { leads: { ...placed, asks } });
}

export function askLead(session: Session, asks: Leads["asks"]): void {
  showOperate(session, { leads: { ...session.get().operate.leads, asks } });
}
