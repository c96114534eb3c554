import indexedDbAdapter from "pouchdb-adapter-indexeddb";
import PouchDB from "pouchdb-browser";
import { ChangedElsewhere } from "./changed-elsewhere.ts";
import type { JobShelf } from "./job-shelf.ts";
import type { JobSummary, Picture } from "./port.ts";
import { fileFor, hashesIn, hashIn, storedJob, storedText } from "./stored-job.ts";

PouchDB.plugin(indexedDbAdapter);

/** `job:<key>`: the whole job as text, so that fields of any name survive. */
interface JobDocument {
  readonly text: string;
}

/** `row:<key>`: what the list of jobs shows, apart so that listing loads no job. */
interface RowDocument {
  readonly title: string;
  readonly savedAt: string;
}

/** `picture:<sha-256>`: one picture, its bytes as an attachment. */
interface PictureDocument {
  readonly type: string;
}

type Document = Partial<JobDocument & RowDocument & PictureDocument>;

const LAST_OPENED = "_local/last-opened";
const BYTES = "bytes";
/** Another tab may write between our looking and our writing; more often than this it does not. */
const ATTEMPTS = 10;

/** Another version stands where a certain one was to be replaced. */
class Overtaken extends Error {}

const isMissing = (error: unknown) => (error as { status?: number } | null)?.status === 404;

/** Jobs and pictures in the browser's IndexedDB database `name`. */
export function pouchShelf(name: string): JobShelf {
  const database = new PouchDB<Document>(name, {
    adapter: "indexeddb",
    auto_compaction: true,
    revs_limit: 2,
  });

  async function find(id: string) {
    try {
      return await database.get(id);
    } catch (error) {
      if (isMissing(error)) return null;
      throw error;
    }
  }

  /** Ids with their present revisions, of documents that are there. */
  async function revisions(ids: readonly string[]): Promise<Map<string, string>> {
    const found = new Map<string, string>();
    const { rows } = await database.allDocs({ keys: [...ids] });
    for (const row of rows) {
      if ("value" in row && row.value && !row.value.deleted) found.set(row.id, row.value.rev);
    }
    return found;
  }

  /**
   * Writes documents in one transaction, over whatever stands there, and tells their revisions.
   * The one that `over` names must stand there as it says, else it is not written.
   */
  async function overwrite(
    documents: ReadonlyMap<string, Document & { _deleted?: true }>,
    over: { readonly id: string; readonly revision: string | undefined } | null = null,
  ): Promise<ReadonlyMap<string, string>> {
    const left = new Map(documents);
    const written = new Map<string, string>();
    for (let attempt = 1; ; attempt++) {
      const now = await revisions([...left.keys()]);
      if (over && left.has(over.id) && now.get(over.id) !== over.revision) throw new Overtaken();
      const results = await database.bulkDocs(
        [...left].map(([id, document]) => ({ ...document, _id: id, _rev: now.get(id) })),
      );
      let failure: PouchDB.Core.Error | undefined;
      for (const result of results) {
        if ("rev" in result) {
          written.set(result.id, result.rev);
          left.delete(result.id);
        } else failure ??= result;
      }
      if (!failure) return written;
      if (failure.status !== 409 || attempt === ATTEMPTS) {
        throw new Error(failure.message ?? failure.reason ?? "the browser refused to save");
      }
      // Two tabs in step would collide for ever: each steps aside for a time of its own.
      await new Promise((resolve) => setTimeout(resolve, Math.random() * 10 * attempt));
    }
  }

  const within = (prefix: string) => ({ startkey: prefix, endkey: `${prefix}\uffff` });

  /** Hashes of the pictures that any job refers to. */
  async function hashesInUse(): Promise<ReadonlySet<string>> {
    const { rows } = await database.allDocs({ ...within("job:"), include_docs: true });
    return new Set(rows.flatMap((row) => [...hashesIn(row.doc?.text ?? "")]));
  }

  /** The row's title is that of the stored job again, should a save have got half-way. */
  async function retitle(key: string) {
    const document = await find(`job:${key}`);
    const row = await find(`row:${key}`);
    if (!document || !row) return;
    const title = String((JSON.parse(document.text ?? "{}") as { title?: unknown }).title ?? "");
    if (row.title === title) return;
    await overwrite(new Map([[row._id, { title, savedAt: row.savedAt ?? "" }]]));
  }

  async function removeUnused(hashes: ReadonlySet<string>) {
    const inUse = await hashesInUse();
    const ids = [...hashes].filter((hash) => !inUse.has(hash)).map((hash) => `picture:${hash}`);
    const there = await revisions(ids);
    if (there.size === 0) return;
    await overwrite(new Map([...there.keys()].map((id) => [id, { _deleted: true as const }])));
  }

  return {
    async list() {
      const { rows } = await database.allDocs({ ...within("row:"), include_docs: true });
      const summaries: JobSummary[] = rows.map((row) => ({
        key: row.id.slice("row:".length),
        title: row.doc?.title ?? "",
        savedAt: row.doc?.savedAt ?? "",
      }));
      return summaries.sort((a, b) => (a.savedAt < b.savedAt ? 1 : -1));
    },

    async load(key) {
      const document = await find(`job:${key}`);
      if (!document) return null;
      return { job: storedJob(key, document.text ?? ""), revision: document._rev };
    },

    async save(key, job, upon) {
      const id = `job:${key}`;
      const documents = new Map<string, Document>([
        [id, { text: storedText(job) }],
        [`row:${key}`, { title: job.title, savedAt: new Date().toISOString() }],
      ]);
      try {
        const written = await overwrite(documents, upon && { id, ...upon });
        return written.get(id) ?? "";
      } catch (error) {
        if (!(error instanceof Overtaken)) throw error;
        await retitle(key);
        throw new ChangedElsewhere(key);
      }
    },

    async remove(key) {
      const document = await find(`job:${key}`);
      const there = await revisions([`job:${key}`, `row:${key}`]);
      await overwrite(new Map([...there.keys()].map((id) => [id, { _deleted: true as const }])));
      await removeUnused(hashesIn(document?.text ?? ""));
    },

    async putPicture(picture: Picture) {
      const file = fileFor(picture);
      const id = `picture:${hashIn(file)}`;
      if (await find(id)) return file;
      // A copy: the bytes may be a view into something larger or shared.
      const data = new Blob([picture.bytes.slice()], { type: picture.type });
      await database.put({
        _id: id,
        type: picture.type,
        _attachments: { [BYTES]: { content_type: picture.type, data } },
      });
      return file;
    },

    async getPicture(file) {
      const hash = hashIn(file);
      const document = hash === null ? null : await find(`picture:${hash}`);
      if (!document) return null;
      const blob = (await database.getAttachment(document._id, BYTES)) as Blob;
      const bytes = new Uint8Array(await blob.arrayBuffer());
      return { bytes, type: document.type ?? blob.type };
    },

    async lastOpened() {
      const document = (await find(LAST_OPENED)) as { title?: string } | null;
      const key = document?.title ?? null;
      return key !== null && (await find(`row:${key}`)) ? key : null;
    },

    async setLastOpened(key) {
      const now = await find(LAST_OPENED);
      await database.put({ _id: LAST_OPENED, _rev: now?._rev, title: key });
    },
  };
}
