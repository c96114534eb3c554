import type { VisitStore } from "./port.ts";
import { pouchShelf } from "./pouch-shelf.ts";
import { shelfStore } from "./shelf-store.ts";
import { windowsOf } from "./windows.ts";

export { pouchShelf };

/** Jobs and pictures in the browser's database `name`, written from this very thread. */
export const pouchJobStore = (name: string): VisitStore =>
  shelfStore(pouchShelf(name), windowsOf(name));
