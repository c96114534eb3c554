import { posix } from "node:path";
import {
  type Import,
  importsOf,
  isNodeModule,
  packageOf,
  type SourceFile,
} from "../support/source-files.ts";

/** Which folder of src/ may import which: the table of docs/architecture.md. */
export const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  base: [],
  standards: ["base"],
  scan: ["base"],
  job: ["base", "standards"],
  plug: ["base", "standards", "job"],
  circuit: ["base", "standards", "job"],
  roles: ["base", "standards", "job", "circuit"],
  readings: ["base", "standards", "job", "circuit", "roles"],
  check: ["base", "standards", "job", "plug", "circuit", "roles", "readings"],
  isolate: ["base", "standards", "job", "circuit", "roles", "readings"],
  standin: ["base", "standards", "job", "circuit", "roles", "readings"],
  sheet: [
    "base",
    "standards",
    "scan",
    "job",
    "plug",
    "circuit",
    "roles",
    "readings",
    "check",
    "isolate",
    "standin",
  ],
  store: ["base", "job"],
  session: [
    "base",
    "standards",
    "scan",
    "job",
    "plug",
    "circuit",
    "roles",
    "readings",
    "check",
    "isolate",
    "standin",
    "sheet",
    "store",
  ],
  editor: [
    "base",
    "standards",
    "scan",
    "job",
    "plug",
    "circuit",
    "roles",
    "readings",
    "check",
    "isolate",
    "standin",
    "sheet",
    "store",
    "session",
  ],
  cli: [
    "base",
    "standards",
    "scan",
    "job",
    "plug",
    "circuit",
    "roles",
    "readings",
    "check",
    "isolate",
    "standin",
    "sheet",
    "store",
  ],
};

/** Rows of the table whose folder holds nothing yet. */
export const TO_COME: readonly string[] = ["isolate", "standin"];

/** Packages that a folder may use; the editor and the command line may use any fit for them. */
export const PACKAGES: Readonly<Record<string, readonly string[]>> = {
  job: ["fflate", "immer", "zod"],
  scan: ["culori"],
  sheet: ["pdfmake"],
  store: ["pouchdb-adapter-indexeddb", "pouchdb-browser"],
  session: ["immer"],
};

/** What only the editor may know. */
const SCREEN_PACKAGES = /^(react|react-dom|react-konva|konva|radix-ui|@radix-ui\/.*|lucide-react)$/;

/** Folders and files that may use Node. Both lists are paths that must exist. */
export const KNOWS_NODE: readonly string[] = ["src/cli", "src/store/files.ts"];

/** Folders and files that may know the DOM. */
export const KNOWS_DOM: readonly string[] = [
  "src/editor",
  "src/store/pouch-shelf.ts",
  "src/store/windows.ts",
];

/**
 * Files that another folder may import beside its index.ts, because they know a browser or Node
 * and the index must not.
 */
export const ENTRIES: readonly string[] = [
  "src/store/files.ts",
  "src/store/pouch-shelf.ts",
  "src/store/windows.ts",
];

const within = (path: string, places: readonly string[]) =>
  places.some((place) => path === place || path.startsWith(`${place}/`));

/** `src/job/index.ts` -> `job`; null for what is not inside a folder of src/. */
export function folderOf(path: string): string | null {
  const [top, folder, rest] = path.split("/");
  return top === "src" && folder !== undefined && rest !== undefined ? folder : null;
}

/** Everything that is wrong with what a file imports, one sentence each. */
export function violations(file: SourceFile): string[] {
  const folder = folderOf(file.path);
  if (folder === null) return [`${file.path}: lies in no folder of src/`];
  const allowed = MAY_IMPORT[folder];
  if (!allowed) return [`${file.path}: ${folder}/ is not in the table of who may import whom`];
  return importsOf(file).flatMap((one) => {
    const wrong = fault(file.path, folder, allowed, one);
    return wrong === null ? [] : [`${file.path}: ${wrong}`];
  });
}

function fault(path: string, from: string, allowed: readonly string[], one: Import): string | null {
  const { specifier } = one;
  if (specifier === null) return "imports something that is named only at run time";
  if (specifier.startsWith(".")) return faultOfRelative(path, from, allowed, one, specifier);
  if (isNodeModule(specifier)) {
    return within(path, KNOWS_NODE) ? null : `uses Node's ${specifier}`;
  }
  const name = packageOf(specifier);
  if (from === "editor") return null;
  if (SCREEN_PACKAGES.test(name)) return `uses ${name}, which only the editor may know`;
  if (from === "cli" || PACKAGES[from]?.includes(name)) return null;
  return `uses the package ${name}, which is not listed for ${from}/`;
}

function faultOfRelative(
  path: string,
  from: string,
  allowed: readonly string[],
  { typeOnly }: Import,
  specifier: string,
): string | null {
  const target = posix.join(posix.dirname(path), specifier.replace(/\?.*$/, ""));
  const to = folderOf(target);
  if (to === null) return `imports ${specifier}, outside the folders of src/`;
  if (to === from) return null;
  if (!allowed.includes(to)) return `${from}/ may not import ${to}/`;
  if (from === "session" && to === "store" && !typeOnly) {
    return "session/ knows the store by its port only: import its types";
  }
  if (target === `src/${to}/index.ts` || ENTRIES.includes(target)) return null;
  return `imports ${target}, not ${to}/index.ts`;
}

/** Circles of files that need one another when they are loaded, each as a path that ends where it began. */
export function cycles(files: readonly SourceFile[]): string[] {
  const next = new Map(files.map((file) => [file.path, loads(file)]));
  const settled = new Set<string>();
  const found: string[] = [];
  const visit = (path: string, trail: readonly string[]) => {
    const seen = trail.indexOf(path);
    if (seen >= 0) {
      found.push([...trail.slice(seen), path].join(" -> "));
      return;
    }
    if (settled.has(path)) return;
    for (const target of next.get(path) ?? []) visit(target, [...trail, path]);
    settled.add(path);
  };
  for (const file of files) visit(file.path, []);
  return found;
}

function loads(file: SourceFile): string[] {
  return importsOf(file)
    .filter(({ specifier, typeOnly }) => !typeOnly && specifier?.startsWith("."))
    .map(({ specifier }) => posix.join(posix.dirname(file.path), specifier ?? ""));
}
