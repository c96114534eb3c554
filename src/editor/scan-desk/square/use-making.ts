import { useEffect, useRef, useState } from "react";
import type { Id, Sheet } from "../../../job/index.ts";
import type { CleanStep, Squaring } from "../../../scan/index.ts";
import { isUnchanged, originalOf } from "../../../session/index.ts";
import { useSession } from "../../session-context.tsx";
import { useJobStore } from "../../store-context.tsx";
import type { SquarePort } from "../../workers/open-square.ts";

/** The whole picture being made and stored. */
export interface Making {
  /** 0 to 1; null while nothing is made. */
  readonly share: number | null;
  readonly problem: string | null;
  readonly make: (squaring: Squaring, cleaning: readonly CleanStep[]) => void;
  readonly stop: () => void;
}

/**
 * Makes the picture at full resolution and stores it; then tells of it, with null where the picture
 * stays as it came. Nothing is told once it was stopped, or the sheet shows another picture.
 */
export function useMaking(
  port: SquarePort,
  file: string,
  sheetId: Id,
  onMade: (image: NonNullable<Sheet["image"]> | null) => void,
): Making {
  const session = useSession();
  const store = useJobStore();
  const [share, setShare] = useState<number | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const round = useRef(0);
  useEffect(() => () => void round.current++, []);

  const make = async (squaring: Squaring, cleaning: readonly CleanStep[]) => {
    const begun = ++round.current;
    setProblem(null);
    if (isUnchanged(squaring, cleaning)) {
      onMade(null);
      return;
    }
    const { key } = session.get();
    setShare(0);
    try {
      const { picture, width, height } = await port.make(squaring, cleaning, (done) => {
        if (begun === round.current) setShare(done);
      });
      if (begun !== round.current) return;
      const stored = await store.putPicture(picture);
      if (begun !== round.current) return;
      const now = session.get();
      const sheet = now.job.diagram.sheets.find((one) => one.id === sheetId);
      if (now.key !== key || !sheet || originalOf(sheet)?.file !== file) {
        throw new Error("The sheet was changed meanwhile: nothing was done to its picture.");
      }
      onMade({ file: stored, width, height });
    } catch (error) {
      const told = error instanceof Error ? error : new Error(String(error));
      if (begun === round.current && told.name !== "CalledOff") setProblem(told.message);
    } finally {
      if (begun === round.current) setShare(null);
    }
  };

  return {
    share,
    problem,
    make: (squaring, cleaning) => void make(squaring, cleaning),
    stop: () => {
      round.current++;
      port.callOff();
      setShare(null);
    },
  };
}
