import { Pencil, Repeat2, Trash2 } from "lucide-react";
import { Button, Tip } from "../app/controls/index.ts";

interface EntryActsProps {
  /** What the entry is, as in `reading R3`. */
  name: string;
  /** What doing it once more is called: `Take` it again, `Do` it again. */
  again: string;
  /** Another one is being entered: that comes first. */
  busy?: boolean;
  onAgain: () => void;
  onMend: () => void;
  onDelete: () => void;
}

/** What can be done with an entry of the machine's list: once more, mended, deleted. */
export function EntryActs(props: EntryActsProps) {
  const { name, again, busy = false, onAgain, onMend, onDelete } = props;
  return (
    <>
      <Tip text={`${again} it again`}>
        <Button
          tone="quiet"
          icon={<Repeat2 aria-hidden />}
          aria-label={`${again} ${name} again`}
          disabled={busy}
          onClick={onAgain}
        />
      </Tip>
      <Tip text="Mend it">
        <Button
          tone="quiet"
          icon={<Pencil aria-hidden />}
          aria-label={`Mend ${name}`}
          disabled={busy}
          onClick={onMend}
        />
      </Tip>
      <Tip text="Delete it">
        <Button
          tone="quiet"
          icon={<Trash2 aria-hidden />}
          aria-label={`Delete ${name}`}
          onClick={onDelete}
        />
      </Tip>
    </>
  );
}
