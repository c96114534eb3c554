import { pathText } from "./json-guard.ts";
import { extensionOf, type Picture } from "./picture.ts";
import type { Job, Part } from "./types.ts";

/** A picture that the job refers to: its `file`, where the job says so, and whose it is. */
export interface ImageUse {
  readonly file: string;
  readonly path: string;
  readonly owner: string;
}

const partPhotos = (parts: readonly Part[] | undefined, base: readonly PropertyKey[]): ImageUse[] =>
  (parts ?? []).flatMap((part, index) =>
    part.photo === undefined
      ? []
      : [
          {
            file: part.photo,
            path: pathText([...base, index, "photo"]),
            owner: `part ${part.id}`,
          },
        ],
  );

/** Every place in the job that refers to a picture. */
export function imageUsesOf(job: Job): readonly ImageUse[] {
  const uses: ImageUse[] = [];
  job.diagram.sheets.forEach((sheet, index) => {
    if (sheet.image) {
      const path = pathText(["diagram", "sheets", index, "image", "file"]);
      uses.push({ file: sheet.image.file, path, owner: `sheet ${sheet.id}` });
    }
    if (sheet.original) {
      const path = pathText(["diagram", "sheets", index, "original", "file"]);
      uses.push({ file: sheet.original.file, path, owner: `original of sheet ${sheet.id}` });
    }
  });
  uses.push(...partPhotos(job.diagram.parts, ["diagram", "parts"]));
  job.plugs.forEach((plug, index) => {
    if (plug.photo) {
      const path = pathText(["plugs", index, "photo", "file"]);
      uses.push({ file: plug.photo.file, path, owner: `plug ${plug.id}` });
    }
  });
  job.machines.forEach((machine, m) => {
    machine.changes?.forEach((change, c) => {
      uses.push(...partPhotos(change.parts, ["machines", m, "changes", c, "parts"]));
    });
  });
  return uses;
}

/** The files that the job's pictures lie in, each once, as the job writes them. */
export const imageFilesOf = (job: Job): readonly string[] => [
  ...new Set(imageUsesOf(job).map((use) => use.file)),
];

/** The same job with its pictures' files renamed; files not in `names` stay as they are. */
export function renameImages(job: Job, names: ReadonlyMap<string, string>): Job {
  const named = (file: string) => names.get(file) ?? file;
  const parts = (list: readonly Part[]) =>
    list.map((part) => (part.photo === undefined ? part : { ...part, photo: named(part.photo) }));
  return {
    ...job,
    diagram: {
      ...job.diagram,
      sheets: job.diagram.sheets.map((sheet) => ({
        ...sheet,
        ...(sheet.image && { image: { ...sheet.image, file: named(sheet.image.file) } }),
        ...(sheet.original && {
          original: { ...sheet.original, file: named(sheet.original.file) },
        }),
      })),
      parts: parts(job.diagram.parts),
    },
    plugs: job.plugs.map((plug) =>
      plug.photo ? { ...plug, photo: { ...plug.photo, file: named(plug.photo.file) } } : plug,
    ),
    machines: job.machines.map((machine) =>
      machine.changes
        ? {
            ...machine,
            changes: machine.changes.map((change) =>
              change.parts ? { ...change, parts: parts(change.parts) } : change,
            ),
          }
        : machine,
    ),
  };
}

/**
 * The path in one spelling, without `.` steps; null when it is anything but a plain relative path
 * to a file below its own folder, on any system: absolute, climbing, a drive, a URL, a backslash,
 * a control character.
 */
export function safeFile(file: string): string | null {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  if (file === "" || file.length > 1000 || /[\\:\x00-\x1f\x7f]/.test(file)) return null;
  const steps = file.split("/");
  if (steps.some((step) => step === "" || step === "..")) return null;
  const named = steps.filter((step) => step !== ".");
  return named.length === 0 ? null : named.join("/");
}

/**
 * Names below `images/` for the pictures, with the extension of what they truly are, so that a
 * file written under them can be nothing but a picture. A name that is so already is kept.
 */
export function imageNames(pictures: ReadonlyMap<string, Picture>): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  const taken = new Set<string>();
  for (const [file, picture] of pictures) {
    const extension = extensionOf(picture.type);
    const base = file.split("/").at(-1) ?? "";
    const stem = base.replace(/\.[^.]*$/, "").replace(/[^\w.-]+/g, "_") || "picture";
    const ending = base.replace(/^.*\./, "").replace(/^jpeg$/, "jpg");
    const kept = /^images\/[\w.-]+$/.test(file) && ending === extension;
    let name = kept ? file : `images/${stem}.${extension}`;
    for (let n = 2; taken.has(name.toLowerCase()); n++) name = `images/${stem}-${n}.${extension}`;
    taken.add(name.toLowerCase());
    names.set(file, name);
  }
  return names;
}
