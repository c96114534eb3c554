import { type Id, pictureType } from "../../job/index.ts";
import { capital } from "../../roles/index.ts";
import { addSheet, createStore, noteImported, type Session } from "../../session/index.ts";
import type { JobStore } from "../../store/index.ts";
import type { PdfPages } from "./pdf-pages.ts";
import { sniff } from "./sniff.ts";

/** Where an imported picture goes. */
export interface ImportInto {
  readonly session: Session;
  readonly store: JobStore;
}

/** A PDF waits here for the user to choose a page; the dialog answers it. */
export interface PageQuestion {
  readonly pages: PdfPages;
  readonly name: string;
  readonly answer: (page: number | null) => void;
}

/** The PDF whose page is being asked for; null when there is none. */
export const pageQuestion = createStore<{ readonly asked: PageQuestion | null }>({ asked: null });

/** Bytes beyond which no scan of a diagram goes, and a tab may die of reading them. */
const MOST_BYTES = 200e6;

/** `wiring p3.jpg` is titled `wiring p3`. A nameless paste has no title. */
function titleOf(name: string): string | undefined {
  const title = name.replace(/\.[a-z0-9]{1,5}$/i, "").trim();
  return title === "" || /^(image|blob|clipboard)$/i.test(title) ? undefined : title.slice(0, 80);
}

/**
 * Makes a picture or a chosen PDF page a new sheet, in one edit, and shows it. Returns the sheet's
 * id; null when the user chose no page. Rejects with a sentence for the user when the file is not
 * a picture that can be read; nothing has changed then.
 */
export async function importPicture(file: Blob, into: ImportInto): Promise<Id | null> {
  const name = file instanceof File ? file.name : "";
  const called = name === "" ? "This" : `“${name}”`;
  if (file.size > MOST_BYTES) throw new Error(`${called} is too large: over 200 MB.`);
  const bytes = new Uint8Array(await file.arrayBuffer());
  const kind = sniff(bytes);
  if (kind === null) {
    throw new Error(`${called} is not a picture. Use a PNG, JPEG or WebP picture, or a PDF.`);
  }
  if (kind !== "application/pdf") {
    refuseTooLarge(bytes, name === "" ? "without a name" : name);
    return keep(bytes, kind, titleOf(name), called, into);
  }

  const { openPdf } = await import("./pdf-pages.ts");
  const pages = await openPdf(bytes);
  try {
    const page = pages.count === 1 ? 1 : await askForPage(pages, name);
    if (page === null) return null;
    const png = new Uint8Array(await (await pages.render(page)).arrayBuffer());
    const title = titleOf(name);
    const titled = pages.count > 1 ? [title, `page ${page}`].filter(Boolean).join(" ") : title;
    return await keep(png, "image/png", titled, called, into);
  } finally {
    pages.close();
  }
}

/** By its header alone: what a small file unpacks to may be more than this device holds. */
function refuseTooLarge(bytes: Uint8Array, name: string): void {
  const header = pictureType(bytes, name);
  const found = header.ok ? null : header.issues.find(({ code }) => code === "picture-too-large");
  if (found) throw new Error(`${capital(found.message)}.`);
}

function askForPage(pages: PdfPages, name: string): Promise<number | null> {
  return new Promise((resolve) => {
    const answer = (page: number | null) => {
      pageQuestion.set(() => ({ asked: null }));
      resolve(page);
    };
    pageQuestion.set(() => ({ asked: { pages, name, answer } }));
  });
}

async function keep(
  bytes: Uint8Array,
  type: "image/png" | "image/jpeg" | "image/webp",
  title: string | undefined,
  called: string,
  { session, store }: ImportInto,
): Promise<Id> {
  const { key } = session.get();
  const size = await sizeOf(new Blob([bytes as BlobPart], { type })).catch(() => null);
  if (!size) throw new Error(`${called} can't be read: it is cut short or damaged.`);
  const file = await store.putPicture({ bytes, type });
  // Reading a large file takes a while, and the user may have opened another job meanwhile.
  if (session.get().key !== key)
    throw new Error("Another job was opened before the picture was read.");
  let id = "";
  session.edit("Import a picture", (draft) => {
    const image = { file, ...size };
    id = addSheet(draft, title === undefined ? { image } : { title, image });
  });
  session.show({ sheet: id, selection: [], notice: null });
  noteImported(session, id);
  return id;
}

async function sizeOf(blob: Blob): Promise<{ width: number; height: number }> {
  const bitmap = await createImageBitmap(blob);
  const size = { width: bitmap.width, height: bitmap.height };
  bitmap.close();
  return size;
}
