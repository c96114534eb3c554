import type { ReadingVerdict } from "../../readings/index.ts";
import { READING_VERDICT_WORDS } from "../../sheet/index.ts";
import { StatusMark } from "./status-shape.tsx";

const STATUS = {
  inside: "agrees",
  outside: "warning",
  "not-comparable": "unproven",
  invalid: "contradicted",
} as const;

/** How a reading compares with a healthy machine, as shape and words. */
export const ReadingVerdictMark = ({ verdict }: { verdict: ReadingVerdict }) => (
  <StatusMark status={STATUS[verdict]}>{READING_VERDICT_WORDS[verdict]}</StatusMark>
);
