/** Reading the project's own sources, for the tests that guard its shape. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { builtinModules } from "node:module";
import { join, posix } from "node:path";
import { fileURLToPath } from "node:url";
import { parseSync } from "vite";

export const ROOT = fileURLToPath(new URL("../../", import.meta.url));

export interface SourceFile {
  /** From the project's folder, with forward slashes: `src/job/index.ts`. */
  readonly path: string;
  readonly text: string;
}

export interface Import {
  /** As written; null when it is worked out at run time and nobody can tell. */
  readonly specifier: string | null;
  /** Gone after compiling: `import type`, `export type`, `import("x").T`. */
  readonly typeOnly: boolean;
}

export const exists = (path: string): boolean => existsSync(join(ROOT, path));

export const readText = (path: string): string => readFileSync(join(ROOT, path), "utf8");

/** Paths of every file under a folder whose name matches; none when there is no such folder. */
export function filesUnder(folder: string, name: RegExp): string[] {
  if (!exists(folder)) return [];
  return readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && name.test(entry.name))
    .map((entry) =>
      posix.join(entry.parentPath.slice(ROOT.length).replaceAll("\\", "/"), entry.name),
    )
    .sort();
}

export const sourceFiles = (folder: string): SourceFile[] =>
  filesUnder(folder, /\.tsx?$/).map((path) => ({ path, text: readText(path) }));

/** Everything a module names to be loaded: imports, re-exports, type imports, workers' URLs. */
export function importsOf(file: SourceFile): Import[] {
  const parsed = parseSync(file.path, file.text);
  const [error] = parsed.errors;
  if (error) throw new Error(`${file.path}: ${error.message}`);
  const found: Import[] = [];
  for (const { moduleRequest, entries } of parsed.module.staticImports) {
    const typeOnly = entries.length > 0 && entries.every((entry) => entry.isType);
    found.push({ specifier: moduleRequest.value, typeOnly });
  }
  for (const { entries } of parsed.module.staticExports) {
    for (const entry of entries) {
      if (entry.moduleRequest) {
        found.push({ specifier: entry.moduleRequest.value, typeOnly: entry.isType });
      }
    }
  }
  walk(parsed.program, (node) => {
    if (node.type === "ImportExpression") {
      found.push({ specifier: stringOf(node.source), typeOnly: false });
    } else if (node.type === "TSImportType") {
      found.push({ specifier: stringOf(node.source ?? node.argument), typeOnly: true });
    } else if (isOwnUrl(node)) {
      found.push({ specifier: stringOf((node.arguments as unknown[])[0]), typeOnly: false });
    }
  });
  return found;
}

type Node = Readonly<Record<string, unknown>> & { readonly type: string };

const isNode = (value: unknown): value is Node =>
  typeof value === "object" && value !== null && typeof (value as Node).type === "string";

function walk(value: unknown, visit: (node: Node) => void): void {
  if (Array.isArray(value)) {
    for (const one of value) walk(one, visit);
  } else if (isNode(value)) {
    visit(value);
    for (const inner of Object.values(value)) walk(inner, visit);
  }
}

function stringOf(node: unknown): string | null {
  if (!isNode(node)) return null;
  if (node.type === "TSLiteralType") return stringOf(node.literal);
  return typeof node.value === "string" ? node.value : null;
}

/** `new URL("./x.ts", import.meta.url)`: how a bundler is told of a worker or a file. */
function isOwnUrl(node: Node): boolean {
  if (node.type !== "NewExpression" || !isNode(node.callee) || node.callee.name !== "URL") {
    return false;
  }
  const [, base] = node.arguments as unknown[];
  return isNode(base) && base.type === "MemberExpression" && isNode(base.object)
    ? base.object.type === "MetaProperty"
    : false;
}

/** `node:fs`, `fs`, `fs/promises` */
export const isNodeModule = (specifier: string): boolean =>
  specifier.startsWith("node:") || builtinModules.includes(specifier.split("/")[0] ?? "");

/** `@scope/name/file.ttf?url` -> `@scope/name` */
export function packageOf(specifier: string): string {
  const [first = "", second = ""] = specifier.split("/");
  return first.startsWith("@") ? `${first}/${second}` : first;
}
