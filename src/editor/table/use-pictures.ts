import { useRef } from "react";
import type { Id } from "../../job/index.ts";
import type { MeterPictures } from "../../session/index.ts";
import { useAnswer, useSelected } from "../session-context.tsx";

const NONE: MeterPictures = new Map();

/**
 * What was measured at the rows of a plug. While it is judged anew after an edit, as it was judged
 * before: the same as the verdicts, and marked so with them.
 */
export function usePictures(plug: Id | null): MeterPictures {
  const key = useSelected((state) => state.key);
  const machine = useSelected((state) => state.machine);
  const measured = useSelected(
    (state) =>
      (state.job.machines.find(({ id }) => id === state.machine)?.readings.length ?? 0) > 0,
  );
  const answer = useAnswer(measured ? { about: "meter", plug } : null);
  const of = JSON.stringify([key, machine, plug]);
  const last = useRef<{ of: string; pictures: MeterPictures } | null>(null);
  if (answer) last.current = { of, pictures: answer };
  return answer ?? (last.current?.of === of ? last.current.pictures : NONE);
}
