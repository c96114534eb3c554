import { createContext, type ReactNode, useContext, useSyncExternalStore } from "react";
import { analysisOf, type Session, type SessionState } from "../session/index.ts";

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

/** Roles and findings of the open job for the machine at hand, worked out once per document. */
export function useAnalysis() {
  const job = useSelected((state) => state.job);
  const machine = useSelected((state) => state.machine);
  return analysisOf(job, machine);
}
