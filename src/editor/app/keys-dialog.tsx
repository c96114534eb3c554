import type { Command } from "../../session/index.ts";
import { useSession } from "../session-context.tsx";
import { keysOf } from "./command-button.tsx";
import { Modal } from "./controls/index.ts";
import styles from "./keys-dialog.module.css";

/** Every command that has keys, from the same list that the keyboard reads. */
export function KeysDialog({ commands }: { commands: readonly Command[] }) {
  const session = useSession();
  return (
    <Modal title="Keys" onClose={() => session.show({ dialog: null })}>
      <dl className={styles.keys}>
        {commands
          .filter((command) => command.keys?.length)
          .map((command) => (
            <div key={command.id}>
              <dt>{command.label}</dt>
              <dd>
                <kbd>{keysOf(command)}</kbd>
              </dd>
            </div>
          ))}
      </dl>
    </Modal>
  );
}
