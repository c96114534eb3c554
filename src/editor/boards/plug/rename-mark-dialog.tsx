import { useState } from "react";
import { Button, Modal } from "../../app/controls/index.ts";
import { TextField } from "./fields.tsx";
import styles from "./rename-mark-dialog.module.css";

interface RenameMarkDialogProps {
  mark: string;
  /** Marks of the plug's other cavities. */
  taken: readonly string[];
  onClose: () => void;
  onRename: (mark: string) => void;
}

export function RenameMarkDialog({ mark, taken, onClose, onRename }: RenameMarkDialogProps) {
  const [text, setText] = useState(mark);
  const tidy = text.trim();
  const problem =
    tidy === ""
      ? "Type the mark that is moulded beside it."
      : taken.includes(tidy)
        ? `Another cavity is marked ${tidy} already.`
        : null;
  return (
    <Modal
      title={`Change mark ${mark}`}
      lead="Ties, wires and readings of this cavity go with it."
      onClose={onClose}
    >
      <form
        className={styles.form}
        onSubmit={(event) => {
          event.preventDefault();
          if (!problem) onRename(tidy);
        }}
      >
        <TextField label="Mark" value={text} onChange={setText} />
        <p role="status">{problem}</p>
        <Button type="submit" tone="primary" disabled={problem !== null}>
          Change it
        </Button>
      </form>
    </Modal>
  );
}
