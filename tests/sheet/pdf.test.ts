import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { renderSheetPdf, type SheetOptions, sheetCsv, sheetModel } from "../../src/sheet/index.ts";
import { plain } from "../../src/sheet/text.ts";
import { eightWayCheck, eightWayJob, installedFonts, wideJob } from "./fixtures.ts";
import { readBack } from "./pdf-text.ts";

const options: SheetOptions = {
  side: "wire",
  size: "A4",
  date: "2025-11-14",
  revision: "B",
  preparedBy: "R. Ortega",
};
const fonts = installedFonts();
const printed = async (more: Partial<SheetOptions> = {}) =>
  readBack(
    await renderSheetPdf(
      sheetModel(eightWayJob(), "M1", { ...options, check: eightWayCheck(), ...more }),
      fonts,
    ),
  );

test("every mark, word, code and number is searchable text on one page", {
  timeout: 60_000,
}, async () => {
  const { pages, size, text } = await printed();
  expect(pages).toBe(1);
  expect(size.map(Math.round)).toEqual([595, 842]);
  for (const words of [
    "Plug X1 · pump module",
    "A1 Water pump hold",
    "Sweeper 14",
    "Serial SW-0014 · 5120 h · 24 V system",
    "Seen from the wire side",
    "revision B",
    "14 Nov 2025",
    "R. Ortega",
    "Signature",
    "2 contradictions",
    "printed OUT, but the circuit makes it a ground",
    "1.5 mm²",
    "YERD",
    "drawn as YE",
    "105",
    "empty cavity",
    "blocked cavity",
    "25.40 V",
    ", 14 Nov",
    "not measured",
    "qualified person come first",
    "Never force a probe into a socket.",
  ]) {
    expect(text).toContain(words);
  }
  // The colour's letters stand on the face and in the table.
  expect(text.split("BNBK").length - 1).toBe(2);
});

test("a contradicted word is marked wrong in words, beside what the pin is", {
  timeout: 60_000,
}, async () => {
  const { text } = await printed();
  expect(text).toMatch(/A1:4 OUT × \(wrong\) ground/);
  expect(text).toMatch(/A1:5 GND × \(wrong\) output, grounds the load/);
  expect(text).toMatch(/A1:1 BAT permanent feed/);
  expect(text).toMatch(/A1:6 LAMP input or output/);
});

test("findings that are not printed are counted in words", { timeout: 60_000 }, async () => {
  const { text } = await printed();
  expect(text).toContain("1 more not shown: 1 finding elsewhere in the job.");
  const check = eightWayCheck();
  const warning = check.findings.find((one) => one.severity === "warning");
  if (!warning) throw new Error("no warning");
  const many = { ...check, findings: [...check.findings, ...Array(7).fill(warning)] };
  expect((await printed({ check: many })).text).toContain(
    "3 more not shown: 2 warnings on this plug, 1 finding elsewhere in the job.",
  );
});

test("a face whose places nobody publishes says so on the page", { timeout: 60_000 }, async () => {
  const job = eightWayJob();
  const neutral = { ...job, plugs: job.plugs.map((plug) => ({ ...plug, neutral: true })) };
  const model = sheetModel(neutral, "M1", { ...options, check: eightWayCheck() });
  const { text } = await readBack(await renderSheetPdf(model, fonts));
  expect(text).toContain("Positions are a neutral drawing: go by the moulded marks");
});

test("a word without an end is cut where it is printed, and stays whole in the table of data", {
  timeout: 60_000,
}, async () => {
  const endless = "Q".repeat(2000);
  expect(plain(`${endless} and on`)).toMatch(/^Q{79}… and on$/);
  expect(plain("漢".repeat(200))).toBe("漢".repeat(200));
  const job = eightWayJob();
  const [plug] = job.plugs;
  if (!plug) throw new Error("no plug");
  const cavities = plug.cavities.map((one, at) => (at === 6 ? { ...one, mark: endless } : one));
  const marked = { ...job, plugs: [{ ...plug, cavities }] };
  const model = sheetModel(marked, "M1", { ...options, check: eightWayCheck() });
  const { text } = await readBack(await renderSheetPdf(model, fonts));
  expect(text.replace(/\s/g, "")).toContain(`${"Q".repeat(79)}…`);
  expect(sheetCsv(model)).toContain(endless);
});

test("a sheet that nobody waits for any more is not laid out", async () => {
  const stop = new AbortController();
  stop.abort();
  const model = sheetModel(eightWayJob(), "M1", { ...options, check: eightWayCheck() });
  await expect(renderSheetPdf(model, fonts, stop.signal)).rejects.toThrow(/abort/i);
});

test("the note under the table is true of what was measured plugged in", {
  timeout: 60_000,
}, async () => {
  const job = JSON.parse(readFileSync("sample-data/sweeper/job.json", "utf8"));
  const sheet = sheetModel(job, job.machines[0].id, options);
  const { pages, text } = await readBack(await renderSheetPdf(sheet, fonts));
  expect(pages).toBe(1);
  expect(text).toContain("All readings A1 unplugged, except where “plugged in” is said.");
  expect(text).toMatch(/! 22\.4 Ω, not as expected, 16 Sep to chassis · Q1 at off/);
  expect(text).toContain("SP2:1 to chassis: the meter shows 13.0 V");
  expect(text).not.toContain("not shown");
});

test("Letter paper and the mating side are said and used", { timeout: 60_000 }, async () => {
  const { pages, size, text } = await printed({ size: "Letter", side: "mating" });
  expect([pages, ...size]).toEqual([1, 612, 792]);
  expect(text).toContain("Seen from the mating side");
});

test.each(["A4", "Letter"] as const)(
  "thirty cavities fit one page of %s",
  { timeout: 60_000 },
  async (size) => {
    const { job, check } = wideJob(30);
    const bytes = await renderSheetPdf(sheetModel(job, "M1", { ...options, size, check }), fonts);
    const { pages, text } = await readBack(bytes);
    expect(pages).toBe(1);
    for (let mark = 1; mark <= 30; mark++) expect(text).toContain(`A1:${mark} OUT ${mark}`);
  },
);

test("what does not fit one page goes on to a second, and the first says so", {
  timeout: 60_000,
}, async () => {
  const { job, check } = wideJob(60);
  const { pages, text } = await readBack(
    await renderSheetPdf(sheetModel(job, "M1", { ...options, check }), fonts),
  );
  expect(pages).toBe(2);
  expect(text).toContain("Page 1 of 2 · continues on page 2");
  expect(text).toContain("A1:60 OUT 60");
});

test("markup, script and odd characters in names are printed as they are", {
  timeout: 60_000,
}, async () => {
  const job = eightWayJob();
  const name = `<script>alert(1)</script> & "co" 'x' ]]> \u0000\u202e\ud800 end`;
  const [machine] = job.machines;
  const [plug] = job.plugs;
  if (!machine || !plug) throw new Error("the fixture lost its machine");
  machine.name = name;
  plug.name = name;
  job.title = "{{job}} /JS (app.alert(1))";
  const mark = plug.cavities[0];
  if (mark) mark.mark = "</text><image href='file:///x'/>";
  const { text, hasScript, pages } = await readBack(
    await renderSheetPdf(sheetModel(job, "M1", { ...options, check: eightWayCheck() }), fonts),
  );
  expect(pages).toBe(1);
  expect(hasScript).toBe(false);
  expect(text).toContain(`<script>alert(1)</script> & "co" 'x' ]]> end`);
  expect(text).toContain("/JS (app.alert(1))");
  expect(text.replaceAll(" ", "")).toContain("</text><imagehref='file:///x'/>");
});

test("a plug of which nothing is known still gives an honest sheet", {
  timeout: 60_000,
}, async () => {
  const job = eightWayJob();
  job.links = [];
  const check = { ...eightWayCheck(), roles: [], findings: [] };
  const { text } = await readBack(
    await renderSheetPdf(sheetModel(job, "M1", { ...options, check }), fonts),
  );
  expect(text).toContain("no pins matched yet");
  expect(text).toContain("no pin matched");
  expect(text).toContain("8 cavities, 0 in use");
});
