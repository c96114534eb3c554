import { useState } from "react";
import type { PaperSize } from "../../sheet/index.ts";
import { useSelected } from "../session-context.tsx";

export interface SheetChoices {
  readonly size: PaperSize;
  readonly revision: string;
  readonly preparedBy: string;
}

/** Paper and name are the user's on this device; the revision is the job's. */
const PERSON_KEY = "pintruth-sheet";
const revisionKey = (job: string) => `pintruth-sheet-revision-${job}`;

/** What was chosen for the last sheet, remembered on this device. */
export function useSheetChoices(): [SheetChoices, (change: Partial<SheetChoices>) => void] {
  const job = useSelected((state) => state.key);
  const [choices, setChoices] = useState(() => stored(job));
  const choose = (change: Partial<SheetChoices>) => {
    const next = { ...choices, ...change };
    setChoices(next);
    try {
      const { size, preparedBy } = next;
      localStorage.setItem(PERSON_KEY, JSON.stringify({ size, preparedBy }));
      localStorage.setItem(revisionKey(job), next.revision);
    } catch {
      // Not remembered next time: the sheet itself is none the worse.
    }
  };
  return [choices, choose];
}

function stored(job: string): SheetChoices {
  const usual: SheetChoices = { size: usualPaper(), revision: "A", preparedBy: "" };
  try {
    const person = JSON.parse(localStorage.getItem(PERSON_KEY) ?? "{}") as Partial<SheetChoices>;
    return {
      size: person.size === "A4" || person.size === "Letter" ? person.size : usual.size,
      preparedBy: typeof person.preparedBy === "string" ? person.preparedBy : "",
      revision: localStorage.getItem(revisionKey(job)) ?? usual.revision,
    };
  } catch {
    return usual;
  }
}

/** North America and a few neighbours print on Letter; nearly everyone else on A4. */
const usualPaper = (): PaperSize =>
  /-(US|CA|MX|PH|CL|CO|VE)\b/i.test(navigator.language) ? "Letter" : "A4";
