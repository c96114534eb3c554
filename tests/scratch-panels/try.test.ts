import { writeFileSync } from "node:fs";
import { eightWayCheck, eightWayJob, installedFonts, wideJob } from "/work/main/tests/sheet/fixtures.ts";
import { renderSheetPdf, sheetModel, sheetCsv } from "/work/main/src/sheet/index.ts";
import { test } from "vitest";
test("x", async () => {
const opts = { side: "wire", size: "A4", date: "2025-11-14", revision: "B", preparedBy: "R. Ortega" } as const;
const m = sheetModel(eightWayJob(), "M1", { ...opts, check: eightWayCheck() });
let t=Date.now();
writeFileSync("/tmp/panels/a.pdf", await renderSheetPdf(m, installedFonts())); console.log(Date.now()-t);
writeFileSync("/tmp/panels/a.csv", sheetCsv(m));
for (const n of [15,30,60]) { const w = wideJob(n); t=Date.now();
writeFileSync(`/tmp/panels/w${n}.pdf`, await renderSheetPdf(sheetModel(w.job, "M1", { ...opts, size: "Letter", check: w.check }), installedFonts())); console.log(n, Date.now()-t);}
}, 60000);
