import { createContext, type ReactNode, useContext, useEffect, useMemo, useState } from "react";

export type ThemeName = "light" | "dark";
/** What the user chose; `system` follows the device. */
export type ThemeChoice = ThemeName | "system";

/** Colours for the canvas, read from the same custom properties that style the rest. */
export interface Palette {
  readonly paper: string;
  readonly paperRaised: string;
  readonly ink: string;
  readonly inkSoft: string;
  readonly rule: string;
  readonly ruleStrong: string;
  readonly accent: string;
  readonly accentWash: string;
  readonly contradiction: string;
  readonly contradictionWash: string;
  readonly warning: string;
  readonly agrees: string;
  readonly path: string;
  /** Of a lamp that is on. */
  readonly lit: string;
}

interface Theme {
  readonly name: ThemeName;
  readonly choice: ThemeChoice;
  readonly choose: (choice: ThemeChoice) => void;
  readonly palette: Palette;
}

const PROPERTIES: Readonly<Record<keyof Palette, string>> = {
  paper: "--paper",
  paperRaised: "--paper-raised",
  ink: "--ink",
  inkSoft: "--ink-soft",
  rule: "--rule",
  ruleStrong: "--rule-strong",
  accent: "--accent",
  accentWash: "--accent-wash",
  contradiction: "--contradiction",
  contradictionWash: "--contradiction-wash",
  warning: "--warning",
  agrees: "--agrees",
  path: "--path",
  lit: "--lit",
};

const STORAGE_KEY = "pintruth-theme";
const ThemeContext = createContext<Theme | null>(null);

function readPalette(): Palette {
  const style = getComputedStyle(document.documentElement);
  const entries = Object.entries(PROPERTIES).map(([key, property]) => [
    key,
    style.getPropertyValue(property).trim(),
  ]);
  return Object.fromEntries(entries) as Palette;
}

function storedChoice(): ThemeChoice {
  const stored = localStorage.getItem(STORAGE_KEY);
  return stored === "light" || stored === "dark" ? stored : "system";
}

export function ThemeProvider({ children }: { children: ReactNode }) {
  const [choice, setChoice] = useState<ThemeChoice>(storedChoice);
  const [systemDark, setSystemDark] = useState(
    () => matchMedia("(prefers-color-scheme: dark)").matches,
  );
  useEffect(() => {
    const query = matchMedia("(prefers-color-scheme: dark)");
    const listen = () => setSystemDark(query.matches);
    query.addEventListener("change", listen);
    return () => query.removeEventListener("change", listen);
  }, []);
  const name: ThemeName = choice === "system" ? (systemDark ? "dark" : "light") : choice;
  const theme = useMemo<Theme>(() => {
    document.documentElement.dataset.theme = name;
    return {
      name,
      choice,
      palette: readPalette(),
      choose: (next) => {
        if (next === "system") localStorage.removeItem(STORAGE_KEY);
        else localStorage.setItem(STORAGE_KEY, next);
        setChoice(next);
      },
    };
  }, [name, choice]);
  return <ThemeContext value={theme}>{children}</ThemeContext>;
}

export function useTheme(): Theme {
  const theme = useContext(ThemeContext);
  if (!theme) throw new Error("useTheme outside ThemeProvider");
  return theme;
}
