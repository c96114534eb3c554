import type { ComponentPropsWithRef, ReactNode } from "react";
import styles from "./button.module.css";

export interface ButtonProps extends ComponentPropsWithRef<"button"> {
  /** `primary` is the one next action of a screen; `quiet` has no frame until touched. */
  tone?: "primary" | "plain" | "quiet" | "danger";
  icon?: ReactNode;
}

/** A button at least as large as a thumb. */
export function Button({ tone = "plain", icon, className, children, ...rest }: ButtonProps) {
  return (
    <button
      type="button"
      data-tone={tone}
      data-bare={children === undefined}
      className={className ? `${styles.button} ${className}` : styles.button}
      {...rest}
    >
      {icon}
      {children}
    </button>
  );
}
