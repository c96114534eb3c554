import { createContext, type ReactNode, useContext, useEffect, useSyncExternalStore } from "react";
import {
  type AnswerTo,
  analysisDeskOf,
  type Question,
  questionDeskOf,
  type Session,
  type SessionState,
  type Shown,
} from "../session/index.ts";

const SessionContext = createContext<Session | null>(null);

export function SessionProvider({ session, children }: { session: Session; children: ReactNode }) {
  return <SessionContext value={session}>{children}</SessionContext>;
}

/** The session itself, for event handlers: call `edit`, `show`, `undo` on it. */
export function useSession(): Session {
  const session = useContext(SessionContext);
  if (!session) throw new Error("useSession outside SessionProvider");
  return session;
}

/**
 * A slice of the session's state that re-renders when it changes. `select` must return a stored
 * object or a primitive, never a fresh one: derive fresh values with `useMemo` outside.
 */
export function useSelected<T>(select: (state: SessionState) => T): T {
  const session = useSession();
  return useSyncExternalStore(session.subscribe, () => select(session.get()));
}

/**
 * Roles and findings of the open job for the machine at hand; on a large job those of a few edits
 * ago stand there while newer ones are worked out.
 */
export const useAnalysis = () => useShownAnalysis().result;

/** The same, with whether it is that of the job as it is now. */
export function useShownAnalysis(): Shown {
  const desk = analysisDeskOf(useSession());
  return useSyncExternalStore(desk.subscribe, desk.get);
}

/** Whether there is anything to show of the open job yet. */
export function useAnalysisReady(): boolean {
  const desk = analysisDeskOf(useSession());
  return useSyncExternalStore(desk.subscribe, desk.isReady);
}

/**
 * The solver's answer about the open job and the machine at hand; null while it is worked out, and
 * for no question. Never the answer to another question, or to the same one before an edit.
 */
export function useAnswer<Q extends Question>(question: Q | null): AnswerTo<Q> | null {
  const desk = questionDeskOf(useSession());
  const answer = useSyncExternalStore(desk.subscribe, () => question && desk.answer(question));
  const key = question && JSON.stringify(question);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the same question is asked once
  useEffect(() => (question ? desk.ask(question) : undefined), [desk, key]);
  return answer;
}
