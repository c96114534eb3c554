/** The windows of one browser that use the same database. */
export interface Windows {
  /** Tells the others that the job of that key was saved or removed. */
  tell(key: string): void;
  /** Calls back with what others tell. Returns the call that stops it. */
  hear(listener: (key: string) => void): () => void;
}

/** The windows that use the database `name`; a browser without channels has but one as far as it knows. */
export function windowsOf(name: string): Windows {
  const channel =
    typeof BroadcastChannel === "undefined" ? null : new BroadcastChannel(`${name}-jobs`);
  return {
    tell: (key) => channel?.postMessage(key),
    hear(listener) {
      const hear = ({ data }: MessageEvent) => listener(String(data));
      channel?.addEventListener("message", hear);
      return () => channel?.removeEventListener("message", hear);
    },
  };
}
