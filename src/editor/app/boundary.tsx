import { Component, type ReactNode } from "react";
import styles from "./boundary.module.css";
import { Button } from "./controls/index.ts";

interface BoundaryProps {
  /** What the user calls the piece, e.g. "The plug board". */
  name: string;
  children: ReactNode;
}

interface BoundaryState {
  readonly fault: Error | null;
}

/** Keeps a fault in one piece of the screen from taking the others, and the work, with it. */
export class Boundary extends Component<BoundaryProps, BoundaryState> {
  override state: BoundaryState = { fault: null };

  static getDerivedStateFromError(fault: unknown): BoundaryState {
    return { fault: fault instanceof Error ? fault : new Error(String(fault)) };
  }

  override render() {
    const { fault } = this.state;
    if (!fault) return this.props.children;
    return (
      <div className={styles.fault} role="alert">
        <h3>{this.props.name} stopped</h3>
        <p>Your job is safe and saved. This is a fault of the program, not of your work.</p>
        <p className={styles.why}>{fault.message}</p>
        <Button onClick={() => this.setState({ fault: null })}>Try again</Button>
      </div>
    );
  }
}
