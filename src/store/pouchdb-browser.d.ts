/**
 * The part of PouchDB that the adapter uses. The published types also redeclare Node's global
 * `Buffer`, which breaks every other use of it.
 */
declare module "pouchdb-browser" {
  namespace PouchDB {
    /** An opaque extension, registered once. */
    interface Plugin {
      readonly pouchdbPlugin?: never;
    }

    interface Revision {
      readonly _id: string;
      readonly _rev: string;
    }

    namespace Core {
      interface Error {
        readonly error: boolean | string;
        readonly status?: number;
        readonly message?: string;
        readonly reason?: string;
      }
    }

    interface Written {
      readonly ok: boolean;
      readonly id: string;
      readonly rev: string;
    }

    interface Row<T> {
      readonly id: string;
      readonly value: { readonly rev: string; readonly deleted?: boolean };
      readonly doc?: T & Revision;
    }

    /** What stands in the place of a row that was asked for by its key and is not there. */
    interface Missing {
      readonly key: string;
      readonly error: "not_found";
    }

    type Unsaved<T> = T & {
      readonly _id: string;
      readonly _rev?: string | undefined;
      readonly _deleted?: true;
      readonly _attachments?: Readonly<
        Record<string, { readonly content_type: string; readonly data: Blob }>
      >;
    };
  }

  class PouchDB<T extends object> {
    constructor(
      name: string,
      options: {
        readonly adapter: string;
        readonly auto_compaction: boolean;
        readonly revs_limit: number;
      },
    );
    static plugin(plugin: PouchDB.Plugin): void;
    /** Rejects with status 404 when there is none. */
    get(id: string): Promise<T & PouchDB.Revision>;
    put(document: PouchDB.Unsaved<T>): Promise<PouchDB.Written>;
    bulkDocs(
      documents: readonly PouchDB.Unsaved<T>[],
    ): Promise<(PouchDB.Written | PouchDB.Core.Error)[]>;
    allDocs(options: {
      readonly keys: string[];
    }): Promise<{ readonly rows: (PouchDB.Row<T> | PouchDB.Missing)[] }>;
    allDocs(options: {
      readonly startkey: string;
      readonly endkey: string;
      readonly include_docs: true;
    }): Promise<{ readonly rows: PouchDB.Row<T>[] }>;
    getAttachment(document: string, name: string): Promise<Blob>;
  }

  export default PouchDB;
}

declare module "pouchdb-adapter-indexeddb" {
  const plugin: import("pouchdb-browser").default.Plugin;
  export default plugin;
}
