import { ScanSearch } from "lucide-react";
import { useSyncExternalStore } from "react";
import type { PartsDesk } from "../../../../session/index.ts";
import { ScanButton } from "./scan-button.tsx";
import { usePartsDesk } from "./use-parts.ts";

/** Has the picture looked over for parts, and puts away what was found. */
export function PartsButton() {
  const desk = usePartsDesk();
  return desk && <Toggle desk={desk} />;
}

function Toggle({ desk }: { desk: PartsDesk }) {
  const isOpen = useSyncExternalStore(desk.subscribe, () => desk.get().isOpen);
  return (
    <ScanButton
      icon={<ScanSearch aria-hidden />}
      label="Find parts"
      step="parts"
      tip="Find symbols on the picture and propose them as parts"
      pressed={isOpen}
      onClick={() => (isOpen ? desk.close() : void desk.find())}
    />
  );
}
