import type { Session } from "../session.ts";

/** Something the user can do, as a value: toolbar, keyboard and menus all read the same list. */
export interface Command {
  /** Stable, kebab-case. */
  readonly id: string;
  /** A verb phrase for a button, a menu or a tooltip. */
  readonly label: string;
  /**
   * Chords that run it, e.g. `Mod+Z` or `F`. `Mod` is Ctrl, or Command on a Mac. A letter without
   * `Shift` must be pressed without Shift; a sign such as `?` is matched as typed.
   */
  readonly keys?: readonly string[];
  /** Runs from the keyboard even while a field has the focus. */
  readonly whileTyping?: boolean;
  /** What it would act on now, e.g. the edit that undo takes back; shown after the label. */
  readonly detail?: (session: Session) => string | null;
  readonly canRun: (session: Session) => boolean;
  readonly run: (session: Session) => void;
}

/** What a key event tells, without the DOM. */
export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

const isLetter = (key: string) => key.length === 1 && key.toLowerCase() !== key.toUpperCase();
const isSign = (key: string) => key.length === 1 && !isLetter(key);

/** True when `press` is exactly the chord, e.g. `Mod+Shift+Z`. */
export function matchesChord(chord: string, press: KeyPress): boolean {
  const parts = chord === "+" || chord.endsWith("++") ? chord.split(/\+(?=.)/) : chord.split("+");
  const key = parts.at(-1) ?? "";
  const wants = (modifier: string) => parts.slice(0, -1).includes(modifier);
  if (wants("Mod") !== (press.ctrlKey || press.metaKey)) return false;
  if (wants("Alt") !== press.altKey) return false;
  // A sign such as "?" or "+" needs Shift on some keyboards and not on others.
  if (!isSign(key) && wants("Shift") !== press.shiftKey) return false;
  return isLetter(key) ? key.toLowerCase() === press.key.toLowerCase() : key === press.key;
}

/** The first command of the list that the key press asks for and that can run now. */
export function commandFor(
  commands: readonly Command[],
  press: KeyPress,
  session: Session,
): Command | null {
  return (
    commands.find(
      (command) =>
        command.keys?.some((chord) => matchesChord(chord, press)) && command.canRun(session),
    ) ?? null
  );
}

/** Keys whose names in a key event are not those on the keyboard. */
const KEY_NAMES: Readonly<Record<string, string>> = {
  ArrowLeft: "←",
  ArrowRight: "→",
  ArrowUp: "↑",
  ArrowDown: "↓",
  Escape: "Esc",
  Delete: "Del",
  " ": "Space",
};

/** A chord as printed on the user's keyboard, e.g. `Ctrl+Z` or `Shift+←`. */
export function chordText(chord: string, mac = false): string {
  const [key = chord] = /[^+]+$|\+$/.exec(chord) ?? [];
  const before = chord.slice(0, chord.length - key.length);
  return before.replace("Mod", mac ? "⌘" : "Ctrl") + (KEY_NAMES[key] ?? key);
}
