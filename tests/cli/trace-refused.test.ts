import { existsSync } from "node:fs";
import { symlink } from "node:fs/promises";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { paper, refused, testFolder, traced } from "../support/trace-call.ts";

const folder = testFolder();
const sheet = paper(300, 200, (pen) => {
  pen.fillRect(20, 50, 200, 4);
  pen.fillRect(20, 120, 250, 4);
});
let png = "";
beforeAll(async () => {
  png = await folder.file("page.png", sheet.toBuffer("image/png"));
});

describe("what cannot be traced: 2, one line that says where, and nothing on stdout", () => {
  test("calls", async () => {
    expect(await refused()).toContain("trace needs a picture: write pintruth trace IMAGE");
    expect(await refused(png, png)).toContain("trace takes one picture and not 2");
    expect(await refused(png, "--machine", "M")).toContain("trace has no option --machine");
    expect(await refused(png, "--terminals")).toContain("--terminals needs a value");
  });

  test("pictures", async () => {
    expect(await refused(join(folder.path(), "nowhere.png"))).toContain(
      "nowhere.png: there is no such file",
    );
    expect(await refused(folder.path())).toContain("it is a folder");
    const job = await refused("sample-data/sweeper/job.json");
    expect(job).toContain('"job.json" is not a PNG, JPEG or WebP picture');
    const webp = await folder.file("page.webp", sheet.toBuffer("image/webp"));
    expect(await refused(webp)).toContain("page.webp: a WebP picture is not read here: save it as");
    const half = sheet.toBuffer("image/png").subarray(0, 300);
    expect(await refused(await folder.file("half.png", half))).toContain("the picture is damaged");
  });

  test("a link that leads to itself", async () => {
    const link = join(folder.path(), "ring.png");
    await symlink("ring.png", link);
    expect(await refused(link)).toContain("ring.png: its link leads back to itself: name the file");
  });

  test.skipIf(!existsSync("/dev/zero"))("a device that never ends", async () => {
    expect(await refused(png, "--terminals", "/dev/zero")).toContain(
      "/dev/zero: the file is larger than 16384 kB: choose another",
    );
  });

  test.each([
    ["no JSON", "{", "the file is not JSON"],
    ["a list", "[]", "the file holds no terminals"],
    ["no terminals", "{}", "terminals: that cannot stand there"],
    [
      "a place of one number",
      '{"terminals":{"A:1":[1]}}',
      'terminals["A:1"]: that cannot stand there',
    ],
    ["words for a place", '{"terminals":{"A":[1,"2"]}}', "terminals.A[1]: that cannot stand there"],
    ["a place beyond all numbers", '{"terminals":{"A":[1,1e999]}}', "terminals.A[1]: that cannot"],
    ["a box of three", '{"terminals":{},"parts":[[0,0,9,9],[1,2,3]]}', "parts[1]"],
    ["an answer without a word", '{"terminals":{},"answers":[{"at":[1,2]}]}', "answers[0].joined"],
    [
      "a terminal off the picture",
      '{"terminals":{"A":[-1,5]}}',
      "terminals.A: the terminal lies outside",
    ],
    [
      "a part off the picture",
      '{"terminals":{},"parts":[[0,90000,9,90009]]}',
      "parts[0]: the box lies",
    ],
    [
      "an answer off the picture",
      '{"terminals":{},"answers":[{"at":[3,3],"joined":true},{"at":[3,90000],"joined":false}]}',
      "answers[1].at: the answer lies outside of the picture of",
    ],
    [
      "a terminal named twice",
      '{"terminals":{"S1:1":[9,9],"S1:2":[9,9],"S1:\\u0031":[8,8]}}',
      'terminals["S1:1"]: the file says that twice: keep one, or give each its own name',
    ],
    [
      "an answer that says two things",
      '{"terminals":{"a:\\"}":[1,2]},"answers":[{"at":[1,2],"joined":true},{"at":[3,3],"joined":true,"joined":false}]}',
      "answers[1].joined: the file says that twice",
    ],
    [
      "two lists of terminals",
      '{"terminals":{},"terminals":{"A":[1,2]}}',
      "terminals: the file says",
    ],
    [
      "a name without end",
      JSON.stringify({ terminals: { ["x".repeat(100_000)]: [1, 2] } }),
      `terminals: the name "${"x".repeat(20)}..." has more than 200 letters`,
    ],
    [
      "the same box without end",
      JSON.stringify({ terminals: {}, words: Array(51).fill([0, 0, 900, 900]) }),
      "words: these boxes cover the picture more than 50 times over: give each only once",
    ],
    ["a name that reaches a prototype", '{"terminals":{"__proto__":[1,2]}}', "rename it"],
  ])("terminals files: %s", async (_, text, said) => {
    const file = await folder.file("bad.json", text);
    const err = await refused(png, "--terminals", file);
    expect(err).toContain(`${file}: `);
    expect(err).toContain(said);
  });

  test("a terminals file that is not there", async () => {
    expect(await refused(png, "--terminals", join(folder.path(), "no.json"))).toContain(
      "no such file",
    );
  });
});

test("a terminals file that an editor marked as UTF-8 is read", async () => {
  const file = await folder.file("marked.json", '\ufeff{"terminals":{"a":[9,9]}}');
  expect((await traced(png, "--terminals", file)).unmatched).toEqual(["a"]);
});

test("names that only look alike are different terminals", async () => {
  const text = `{"terminals":{"a":[9,9],"A":[9,9],"a ":[9,9],"a\\"":[9,9],"terminals":[9,9],"at":[9,9]},
    "answers":[{"at":[1,2],"joined":true},{"at":[3,3],"joined":true}]}`;
  const file = await folder.file("alike.json", text);
  expect((await traced(png, "--terminals", file)).unmatched).toHaveLength(6);
});
