import styles from "./working.module.css";

/** Stands where an answer will: quietly, and not at all where the answer comes at once. */
export const Working = ({ children = "working…" }: { children?: string }) => (
  <span className={styles.working}>{children}</span>
);
