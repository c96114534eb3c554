import type { VisitStore } from "../../src/store/index.ts";
import { pouchShelf } from "../../src/store/pouch-shelf.ts";
import { shelfStore } from "../../src/store/shelf-store.ts";
import { windowsOf } from "../../src/store/windows.ts";

/** The browser's store over its database `name`, both on one thread: no worker between them. */
export const pouchJobStore = (name: string): VisitStore =>
  shelfStore(pouchShelf(name), windowsOf(name));
