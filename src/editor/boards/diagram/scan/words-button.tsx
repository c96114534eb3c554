import { ScanText } from "lucide-react";
import { useSyncExternalStore } from "react";
import type { WordDesk } from "../../../../session/index.ts";
import { ScanButton } from "./scan-button.tsx";
import { useWordDesk } from "./use-words.ts";

/** Reads what is printed on the picture, and shows it for looking over. */
export function WordsButton() {
  const desk = useWordDesk();
  return desk && <Toggle desk={desk} />;
}

function Toggle({ desk }: { desk: WordDesk }) {
  const isOpen = useSyncExternalStore(desk.subscribe, () => desk.get().isOpen);
  return (
    <ScanButton
      icon={<ScanText aria-hidden />}
      label="Read words"
      step="words"
      tip="Read what is printed on the picture: names, values, wire numbers and colours"
      pressed={isOpen}
      onClick={() => (isOpen ? desk.close() : void desk.open())}
    />
  );
}
