import { USUAL_CAUTIONS, WHO_COMES_FIRST } from "../../readings/index.ts";
import { useSession } from "../session-context.tsx";
import styles from "./cautions-dialog.module.css";
import { Modal } from "./controls/index.ts";

/** The usual cautions, to be read beside the machine. */
export function CautionsDialog() {
  const session = useSession();
  return (
    <Modal
      title="Before you measure"
      lead={WHO_COMES_FIRST}
      onClose={() => session.show({ dialog: null })}
    >
      <ul className={styles.list}>
        {USUAL_CAUTIONS.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </Modal>
  );
}
