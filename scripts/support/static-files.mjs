import { createReadStream } from "node:fs";
import { realpath, stat } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, sep } from "node:path";

/** Browsers refuse a module or a WebAssembly file that comes with the wrong type. */
const TYPES = new Map([
  [".html", "text/html; charset=utf-8"],
  [".js", "text/javascript; charset=utf-8"],
  [".mjs", "text/javascript; charset=utf-8"],
  [".css", "text/css; charset=utf-8"],
  [".json", "application/json; charset=utf-8"],
  [".webmanifest", "application/manifest+json; charset=utf-8"],
  [".txt", "text/plain; charset=utf-8"],
  [".csv", "text/csv; charset=utf-8"],
  [".svg", "image/svg+xml"],
  [".png", "image/png"],
  [".jpg", "image/jpeg"],
  [".jpeg", "image/jpeg"],
  [".webp", "image/webp"],
  [".ico", "image/x-icon"],
  [".pdf", "application/pdf"],
  [".wasm", "application/wasm"],
  [".ttf", "font/ttf"],
  [".woff2", "font/woff2"],
  [".pintruth", "application/zip"],
]);
const OTHER = "application/octet-stream";

/**
 * The file that a URL's path names inside `root`; null when there is none, when it lies outside
 * (by `..`, by a link) or when a part of its name starts with a dot.
 *
 * @param {string} root absolute folder
 * @param {string} urlPath as received: percent-encoded, perhaps with a query
 * @returns {Promise<{ path: string, size: number } | null>}
 */
export async function fileFor(root, urlPath) {
  let path;
  try {
    path = decodeURIComponent(urlPath.split(/[?#]/, 1)[0] ?? "");
  } catch {
    return null;
  }
  const parts = path.split(/[/\\]/).filter((part) => part !== "");
  if (path.includes("\0") || parts.some((part) => part.startsWith("."))) return null;
  if (path.endsWith("/") || parts.length === 0) parts.push("index.html");
  try {
    const base = await realpath(root);
    const file = await realpath(join(base, ...parts));
    if (!file.startsWith(base + sep)) return null;
    const info = await stat(file);
    return info.isFile() ? { path: file, size: info.size } : null;
  } catch {
    return null;
  }
}

/**
 * Answers a request from the files of a folder.
 *
 * @param {string} root absolute folder
 * @param {import("node:http").IncomingMessage} request
 * @param {import("node:http").ServerResponse} response
 * @returns {Promise<boolean>} false, with nothing sent, when the folder has no such file
 */
export async function sendFile(root, request, response) {
  const file = await fileFor(root, request.url ?? "/");
  if (!file) return false;
  // Names under assets/ change with their contents; everything else is asked for anew.
  const lasting = /^\/assets\//.test(request.url ?? "");
  response.writeHead(200, {
    "Content-Type": TYPES.get(extname(file.path).toLowerCase()) ?? OTHER,
    "Content-Length": file.size,
    "Cache-Control": lasting ? "public, max-age=31536000, immutable" : "no-cache",
    "X-Content-Type-Options": "nosniff",
  });
  if (request.method === "HEAD") {
    response.end();
    return true;
  }
  createReadStream(file.path)
    .on("error", () => response.destroy())
    .pipe(response);
  return true;
}

/**
 * Serves a folder over HTTP, to this machine alone unless `host` says otherwise.
 *
 * @param {string} root absolute folder
 * @param {{ port: number, host?: string, tries?: number }} options a busy port is stepped over,
 *   up to `tries` ports (20)
 * @returns {Promise<{ url: string, close: () => Promise<void> }>} rejects when no port was free
 */
export async function serveFolder(root, { port, host = "127.0.0.1", tries = 20 }) {
  const server = createServer(async (request, response) => {
    if (request.method !== "GET" && request.method !== "HEAD") {
      response.writeHead(405, { Allow: "GET, HEAD" }).end();
    } else if (!(await sendFile(root, request, response))) {
      response.writeHead(404, { "Content-Type": "text/plain; charset=utf-8" }).end("not found\n");
    }
  });
  const taken = await listen(server, host, port, tries);
  return {
    url: `http://${host}:${taken}/`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

/**
 * @param {import("node:http").Server} server
 * @param {string} host
 * @param {number} first
 * @param {number} tries
 * @returns {Promise<number>} the port taken
 */
async function listen(server, host, first, tries) {
  for (let port = first; port < first + tries; port++) {
    const error = await new Promise((resolve) => {
      server.once("error", resolve);
      server.listen(port, host, () => {
        server.off("error", resolve);
        resolve(null);
      });
    });
    if (error === null) return port;
    if (error.code !== "EADDRINUSE" && error.code !== "EACCES") throw error;
  }
  throw new Error(
    `ports ${first} to ${first + tries - 1} are all in use: name another with --port`,
  );
}
