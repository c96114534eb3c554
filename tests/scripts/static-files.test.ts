import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { freePort } from "../../scripts/support/free-port.mjs";
import { fileFor, serveFolder } from "../../scripts/support/static-files.mjs";

const place = mkdtempSync(join(tmpdir(), "pintruth-static-"));
const root = join(place, "root");
let server: Awaited<ReturnType<typeof serveFolder>>;

beforeAll(async () => {
  mkdirSync(join(root, "inner"), { recursive: true });
  mkdirSync(join(place, "root-beside"));
  const files = ["root/index.html", "root/inner/a b.mjs", "root/x.wasm", "root/.hidden"];
  for (const file of [...files, "secret.txt", "root-beside/secret.txt"]) {
    writeFileSync(join(place, file), file);
  }
  symlinkSync(join(place, "secret.txt"), join(root, "link.txt"));
  server = await serveFolder(root, { port: await freePort() });
});

afterAll(async () => {
  await server.close();
  rmSync(place, { recursive: true });
});

describe("the static server", () => {
  test.each([
    ["/", "text/html; charset=utf-8"],
    ["/index.html?x=1", "text/html; charset=utf-8"],
    ["/inner/a%20b.mjs", "text/javascript; charset=utf-8"],
    ["/x.wasm", "application/wasm"],
  ])("answers %s with its type", async (path, type) => {
    const answer = await fetch(new URL(path, server.url));
    expect(answer.status).toBe(200);
    expect(answer.headers.get("content-type")).toBe(type);
  });

  test.each(["/nothing", "/inner", "/.hidden", "/link.txt"])("has nothing at %s", async (path) => {
    const answer = await fetch(new URL(path, server.url));
    expect(answer.status).toBe(404);
  });

  test("refuses what is not a request to read", async () => {
    expect((await fetch(server.url, { method: "POST" })).status).toBe(405);
  });

  test("steps over a port that is in use", async () => {
    const port = Number(new URL(server.url).port);
    const next = await serveFolder(root, { port });
    expect(Number(new URL(next.url).port)).toBeGreaterThan(port);
    await next.close();
  });

  test("says so when every port is in use", async () => {
    const port = Number(new URL(server.url).port);
    await expect(serveFolder(root, { port, tries: 1 })).rejects.toThrow("in use");
  });
});

// A browser tidies such paths before it asks; others do not.
test.each([
  "/../secret.txt",
  "/%2e%2e/secret.txt",
  "/..%2fsecret.txt",
  "/..%5csecret.txt",
  "/../root-beside/secret.txt",
  "/%00",
  "/%",
  "//etc/passwd",
])("no file outside the folder is found by %s", async (path) => {
  expect(await fileFor(root, path)).toBeNull();
});
