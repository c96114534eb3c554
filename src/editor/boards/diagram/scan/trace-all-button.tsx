import { Network } from "lucide-react";
import { traceDeskOf } from "../../../../session/index.ts";
import { useSession } from "../../../session-context.tsx";
import { ScanButton } from "./scan-button.tsx";
import { useTrace } from "./use-trace.ts";

/** Proposes every line of the sheet at once, and puts the list of them away. */
export function TraceAllButton() {
  const desk = traceDeskOf(useSession());
  const open = useTrace((state) => state.isListOpen) ?? false;
  return (
    <ScanButton
      icon={<Network aria-hidden />}
      label="Trace all"
      step="trace"
      tip="Every line between placed parts, proposed at once"
      pressed={open}
      disabled={!desk}
      onClick={() => (open ? desk?.closeList() : void desk?.traceAll())}
    />
  );
}
