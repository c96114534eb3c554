import { Inflate, strFromU8 } from "fflate";
import { fail, type Issue, ok, type Result } from "../base/index.ts";
import { safeFile } from "./images.ts";
import { LIMITS } from "./limits.ts";
import { issue } from "./wording.ts";

/** A file in an archive whose name and declared sizes have been checked; not yet unpacked. */
export interface ZipEntry {
  readonly name: string;
  /** Unpacked bytes, as declared. */
  readonly size: number;
  /** Unpacks it, never past its declared size. */
  read(): Result<Uint8Array>;
}

const END = 0x06054b50;
const CENTRAL = 0x02014b50;
const LOCAL = 0x04034b50;
const STORED = 0;
const DEFLATED = 8;
/** Packed bytes handed to the inflater at a time: what bounds the unpacked bytes of one step. */
const STEP = 4 * 1024;

interface Header {
  readonly name: string;
  readonly nameBytes: Uint8Array;
  readonly flags: number;
  readonly method: number;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  readonly local: number;
}

const viewOf = (bytes: Uint8Array) =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

const damaged = (what: string): Issue => issue("damaged-archive", "", what);

/** Where the end record begins: within the last 64 KiB, since a comment may follow it; -1 if none. */
function findEnd(view: DataView): number {
  const lowest = Math.max(0, view.byteLength - 22 - 0xffff);
  for (let at = view.byteLength - 22; at >= lowest; at--) {
    if (view.getUint32(at, true) === END) return at;
  }
  return -1;
}

/** The central directory (PKWARE APPNOTE 6.3, sections 4.3.12 and 4.3.16), nothing unpacked. */
function readDirectory(bytes: Uint8Array): Result<readonly Header[]> {
  const view = viewOf(bytes);
  const end = findEnd(view);
  if (end < 0) return fail(issue("not-an-archive", ""));
  const count = view.getUint16(end + 10, true);
  if (count > LIMITS.entries) return fail(issue("too-many-files", "", LIMITS.entries));
  let at = view.getUint32(end + 16, true);
  const headers: Header[] = [];
  for (let n = 0; n < count; n++) {
    if (at + 46 > end || view.getUint32(at, true) !== CENTRAL) {
      return fail(damaged("its list of files is broken"));
    }
    const flags = view.getUint16(at + 8, true);
    const nameLength = view.getUint16(at + 28, true);
    const nameBytes = bytes.subarray(at + 46, at + 46 + nameLength);
    headers.push({
      name: strFromU8(nameBytes, (flags & 0x800) === 0),
      nameBytes,
      flags,
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packed: view.getUint32(at + 20, true),
      size: view.getUint32(at + 24, true),
      local: view.getUint32(at + 42, true),
    });
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return ok(headers);
}

const isFolder = (header: Header) => header.name.endsWith("/") && header.size === 0;

/** What the names and declared sizes already give away. */
function headerIssue(headers: readonly Header[], bytes: Uint8Array): Issue | null {
  const names = new Set<string>();
  let unpacked = 0;
  let packed = 0;
  for (const header of headers) {
    const { name, size } = header;
    const file = safeFile(isFolder(header) ? name.slice(0, -1) : name);
    if (file === null) return issue("archive-path", "", name);
    if (names.has(file)) return damaged(`it holds ${JSON.stringify(file)} twice`);
    names.add(file);
    unpacked += size;
    packed += header.packed;
    const isBomb = size > LIMITS.freeBytes && size > header.packed * LIMITS.ratio;
    if (isBomb || unpacked > LIMITS.unpackedBytes) return issue("archive-bomb", "", name);
  }
  // Entries that share their packed bytes are another way to build a bomb.
  if (packed > bytes.length) return damaged("its files overlap");
  return null;
}

/** The packed bytes of an entry, found through its local header, which must tell the same name. */
function packedBytes(bytes: Uint8Array, header: Header): Uint8Array | null {
  const view = viewOf(bytes);
  const at = header.local;
  if (at + 30 > bytes.length || view.getUint32(at, true) !== LOCAL) return null;
  const nameLength = view.getUint16(at + 26, true);
  const name = bytes.subarray(at + 30, at + 30 + nameLength);
  if (name.length !== header.nameBytes.length) return null;
  if (name.some((byte, n) => byte !== header.nameBytes[n])) return null;
  const start = at + 30 + nameLength + view.getUint16(at + 28, true);
  const stop = start + header.packed;
  return stop <= bytes.length ? bytes.subarray(start, stop) : null;
}

/** Unpacks to exactly `size` bytes; throws when there are more, or when the data is damaged. */
function inflate(data: Uint8Array, size: number): Uint8Array {
  const out = new Uint8Array(size);
  let filled = 0;
  const stream = new Inflate((chunk) => {
    out.set(chunk, filled); // throws past the end
    filled += chunk.length;
  });
  for (let at = 0; at < data.length; at += STEP) {
    stream.push(data.subarray(at, at + STEP), at + STEP >= data.length);
  }
  if (filled !== size) throw new RangeError("shorter than declared");
  return out;
}

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1;
  return c;
});

/** CRC-32 as zip and PNG use it (ISO/IEC 3309). */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = (CRC_TABLE[(crc ^ byte) & 0xff] ?? 0) ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}

function readEntry(bytes: Uint8Array, header: Header): Result<Uint8Array> {
  const { name, method, size } = header;
  const broken = fail(damaged(`${JSON.stringify(name)} cannot be unpacked`));
  const data = packedBytes(bytes, header);
  if (!data || (header.flags & 1) !== 0) return broken;
  let content: Uint8Array;
  try {
    if (method === STORED && data.length === size) content = data;
    else if (method === DEFLATED) content = inflate(data, size);
    else return broken;
  } catch {
    return broken;
  }
  return crc32(content) === header.crc ? ok(content) : broken;
}

/**
 * The files of a zip archive by name. Names that would leave their folder, too many files, and
 * sizes that no job has are refused before anything is unpacked.
 */
export function openZip(bytes: Uint8Array): Result<ReadonlyMap<string, ZipEntry>> {
  const headers = readDirectory(bytes);
  if (!headers.ok) return headers;
  const found = headerIssue(headers.value, bytes);
  if (found) return fail(found);
  const entries = new Map<string, ZipEntry>();
  for (const header of headers.value) {
    const name = isFolder(header) ? null : safeFile(header.name);
    if (name === null) continue;
    entries.set(name, { name, size: header.size, read: () => readEntry(bytes, header) });
  }
  return ok(entries);
}
