import { Eye } from "lucide-react";
import { Button } from "../../app/controls/index.ts";

interface BeforeButtonProps {
  isBefore: boolean;
  onBefore: (isBefore: boolean) => void;
}

/** Shows the picture as it was for as long as it is held down, by finger, mouse, space or Enter. */
export function BeforeButton({ isBefore, onBefore }: BeforeButtonProps) {
  const isKey = (key: string) => key === " " || key === "Enter";
  return (
    <Button
      icon={<Eye aria-hidden />}
      aria-pressed={isBefore}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        onBefore(true);
      }}
      onPointerUp={() => onBefore(false)}
      onPointerCancel={() => onBefore(false)}
      onContextMenu={(event) => event.preventDefault()}
      onKeyDown={(event) => {
        if (isKey(event.key)) onBefore(true);
      }}
      onKeyUp={(event) => {
        if (isKey(event.key)) onBefore(false);
      }}
      onBlur={() => onBefore(false)}
    >
      {isBefore ? "Before" : "Hold to compare"}
    </Button>
  );
}
