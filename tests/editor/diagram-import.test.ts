import { beforeEach, expect, test, vi } from "vitest";
import { importPicture, sniff } from "../../src/editor/import/index.ts";
import { newJob } from "../../src/job/index.ts";
import { createSession } from "../../src/session/index.ts";
import type { JobStore, Picture } from "../../src/store/index.ts";

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const bytes = (...parts: (string | number[])[]) =>
  new Uint8Array(
    parts.flatMap((part) =>
      typeof part === "string" ? [...part].map((letter) => letter.charCodeAt(0)) : part,
    ),
  );

function desk() {
  const session = createSession("k", newJob("Test", 24));
  const kept: Picture[] = [];
  const store = {
    putPicture: async (picture: Picture) => {
      kept.push(picture);
      return "images/hash.png";
    },
  } as unknown as JobStore;
  return { session, store, kept };
}

beforeEach(() => {
  vi.stubGlobal("createImageBitmap", async (blob: Blob) => {
    if (blob.size < 12) throw new DOMException("broken", "InvalidStateError");
    return { width: 640, height: 480, close: () => {} };
  });
});

test("a file is known by its first bytes", () => {
  expect(sniff(bytes(PNG))).toBe("image/png");
  expect(sniff(bytes([0xff, 0xd8, 0xff, 0xe0]))).toBe("image/jpeg");
  expect(sniff(bytes("RIFF", [1, 2, 3, 4], "WEBPVP8 "))).toBe("image/webp");
  expect(sniff(bytes("\r\n%PDF-1.7"))).toBe("application/pdf");
  expect(sniff(bytes("<svg xmlns="))).toBeNull();
  expect(sniff(bytes("GIF89a"))).toBeNull();
  expect(sniff(bytes())).toBeNull();
});

test("a picture becomes a sheet in one edit, titled by its file", async () => {
  const { session, store, kept } = desk();
  const id = await importPicture(new File([bytes(PNG, "........")], "page 3.PNG"), {
    session,
    store,
  });
  const [sheet] = session.get().job.diagram.sheets;
  expect(sheet).toEqual({
    id,
    title: "page 3",
    image: { file: "images/hash.png", width: 640, height: 480 },
  });
  expect(session.get().sheet).toBe(id);
  expect(session.get().history.done).toHaveLength(1);
  expect(kept[0]?.type).toBe("image/png");
});

test("the bytes decide and not the name: text called .png is refused and nothing changes", async () => {
  const { session, store, kept } = desk();
  const before = session.get().job;
  const file = new File(["not a picture at all"], "scan.png", { type: "image/png" });
  await expect(importPicture(file, { session, store })).rejects.toThrow(
    /“scan.png” is not a picture/,
  );
  expect(session.get().job).toBe(before);
  expect(kept).toEqual([]);
});

test("a picture cut short is refused and nothing is kept", async () => {
  const { session, store, kept } = desk();
  const before = session.get().job;
  await expect(
    importPicture(new File([bytes(PNG)], "cut.png"), { session, store }),
  ).rejects.toThrow(/cut short or damaged/);
  expect(session.get().job).toBe(before);
  expect(kept).toEqual([]);
});

test("a picture too large by its header is refused before it is unpacked", async () => {
  const { session, store, kept } = desk();
  const decode = vi.fn();
  vi.stubGlobal("createImageBitmap", decode);
  const png = bytes(PNG, [0, 0, 0, 13], "IHDR", [0, 0, 78, 32, 0, 0, 78, 32], [8, 0, 0, 0, 0]);
  const jpeg = bytes([0xff, 0xd8, 0xff, 0xc0, 0, 11, 8, 78, 32, 78, 32, 1, 1, 17, 0]);
  for (const made of [png, jpeg]) {
    await expect(importPicture(new File([made], "huge"), { session, store })).rejects.toThrow(
      'The picture "huge" has 20000 by 20000 pixels, more than 100 megapixels: save it smaller.',
    );
  }
  expect(decode).not.toHaveBeenCalled();
  expect(kept).toEqual([]);
});

test("a picture read after another job was opened does not land in that one", async () => {
  const { session, store } = desk();
  const slow = {
    ...store,
    putPicture: async () => {
      session.open("other", newJob("Other", 12));
      return "images/hash.png";
    },
  } as unknown as JobStore;
  await expect(
    importPicture(new File([bytes(PNG, "........")], "a.png"), { session, store: slow }),
  ).rejects.toThrow(/Another job/);
  expect(session.get().job.diagram.sheets).toEqual([]);
});
