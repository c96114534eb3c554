import { createHash } from "node:crypto";
import fc from "fast-check";
import { expect, test } from "vitest";
import { sha256 } from "../../src/store/sha256.ts";

// FIPS 180-4's examples, as NIST publishes them.
test.each([
  ["", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"],
  ["abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"],
  [
    "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
    "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
  ],
])("of %j", (text, hash) => {
  expect(sha256(new TextEncoder().encode(text))).toBe(hash);
});

test("of any bytes it is what another implementation gives", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
      expect(sha256(bytes)).toBe(createHash("sha256").update(bytes).digest("hex"));
    }),
    { numRuns: 300 },
  );
});

test("of a view into something larger, only the view counts", () => {
  const all = new Uint8Array(200).map((_, n) => n);
  expect(sha256(all.subarray(7, 107))).toBe(sha256(all.slice(7, 107)));
});
