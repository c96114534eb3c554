import type { ReactNode } from "react";
import styles from "./button.module.css";

interface FileLinkProps {
  /** Absent while the file is being made. */
  href: string | undefined;
  /** The file's, with its ending. */
  name: string;
  tone?: "primary" | "plain";
  icon: ReactNode;
  children: ReactNode;
}

/** Saves a file that is made here; looks like a button. */
export function FileLink({ href, name, tone = "plain", icon, children }: FileLinkProps) {
  return (
    <a
      className={styles.button}
      data-tone={tone}
      href={href}
      download={name}
      aria-disabled={href === undefined}
    >
      {icon}
      {children}
    </a>
  );
}
