import { Ellipsis, FolderOpen, Monitor, Moon, Redo2, Search, Sun, Undo2 } from "lucide-react";
import { commandNamed, type PlaceId } from "../../session/index.ts";
import { useSelected, useSession } from "../session-context.tsx";
import { type ThemeChoice, useTheme } from "../theme/theme.tsx";
import { CommandButton, keysOf } from "./command-button.tsx";
import { CommitField } from "./commit-field.tsx";
import {
  Button,
  Menu,
  MenuChoices,
  MenuHeading,
  MenuItem,
  MenuRule,
  Tip,
} from "./controls/index.ts";
import { MachineMenu } from "./machine-menu.tsx";
import { SavedState } from "./saved-state.tsx";
import styles from "./top-bar.module.css";
import type { Form } from "./use-layout.ts";
import { VoltagePicker } from "./voltage-picker.tsx";

const THEMES: readonly { value: ThemeChoice; text: string }[] = [
  { value: "light", text: "Light" },
  { value: "dark", text: "Dark" },
  { value: "system", text: "As the device" },
];

function ThemeMenu() {
  const { choice, choose } = useTheme();
  const icon =
    choice === "light" ? (
      <Sun aria-hidden />
    ) : choice === "dark" ? (
      <Moon aria-hidden />
    ) : (
      <Monitor aria-hidden />
    );
  return (
    <Menu align="end" button={<Button tone="quiet" icon={icon} aria-label="Light or dark" />}>
      <MenuChoices label="Light or dark" value={choice} choices={THEMES} onChoose={choose} />
    </Menu>
  );
}

/** Everything that the bar of a phone has no room for. */
function MoreMenu({ onGo }: { onGo: (station: PlaceId) => void }) {
  const session = useSession();
  const { choice, choose } = useTheme();
  return (
    <Menu
      align="end"
      button={<Button tone="quiet" icon={<Ellipsis aria-hidden />} aria-label="More" />}
    >
      <MenuItem onChoose={() => onGo("match")}>Match pins to cavities</MenuItem>
      {[
        "try",
        "show-sheet",
        "show-find",
        "show-cautions",
        "show-machines",
        "show-compare",
        "show-changes",
        "show-jobs",
      ].map((id) => {
        const command = commandNamed(id);
        return (
          <MenuItem key={id} onChoose={() => command.run(session)}>
            {command.label}
          </MenuItem>
        );
      })}
      <MenuRule />
      <MenuHeading>Light or dark</MenuHeading>
      <MenuChoices label="Light or dark" value={choice} choices={THEMES} onChoose={choose} />
    </Menu>
  );
}

function FindButton() {
  const session = useSession();
  const command = commandNamed("show-find");
  return (
    <Tip text={`${command.label} any name, word, number or colour (${keysOf(command)})`}>
      <Button
        className={styles.find}
        icon={<Search aria-hidden />}
        onClick={() => command.run(session)}
      >
        <span className={styles.findWord}>Find…</span>
      </Button>
    </Tip>
  );
}

interface TopBarProps {
  form: Form;
  onGo: (station: PlaceId) => void;
}

export function TopBar({ form, onGo }: TopBarProps) {
  const session = useSession();
  const title = useSelected((state) => state.job.title);
  const undo = <CommandButton command={commandNamed("undo")} icon={<Undo2 aria-hidden />} />;
  const redo = <CommandButton command={commandNamed("redo")} icon={<Redo2 aria-hidden />} />;
  return (
    <header className={styles.bar} data-form={form}>
      <h1 className={styles.title}>
        <CommitField
          aria-label="Title of the job"
          value={title}
          live
          onCommit={(text, merge) =>
            session.edit(
              `Rename the job “${text}”`,
              (draft) => {
                draft.title = text;
              },
              merge,
            )
          }
        />
      </h1>
      {form === "phone" ? (
        <>
          {undo}
          {redo}
          <MoreMenu onGo={onGo} />
        </>
      ) : (
        <>
          <VoltagePicker />
          <MachineMenu />
          <span className={styles.spring} />
          {undo}
          {redo}
          <FindButton />
          <SavedState />
          <ThemeMenu />
          <Button
            className={styles.jobs}
            icon={<FolderOpen aria-hidden />}
            onClick={() => session.show({ dialog: "jobs" })}
          >
            Jobs
          </Button>
        </>
      )}
    </header>
  );
}
