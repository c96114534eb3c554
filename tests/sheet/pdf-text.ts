import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

export interface ReadBack {
  readonly pages: number;
  /** Points. */
  readonly size: readonly [width: number, height: number];
  readonly text: string;
  readonly title: string;
  readonly hasScript: boolean;
}

/** A PDF read back by another library than wrote it. */
export async function readBack(bytes: Uint8Array): Promise<ReadBack> {
  const task = getDocument({ data: bytes.slice(), verbosity: 0, isEvalSupported: false });
  const document = await task.promise;
  const texts: string[] = [];
  let size: readonly [number, number] = [0, 0];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    size = [width, height];
    const content = await page.getTextContent();
    texts.push(content.items.map((item) => ("str" in item ? item.str : "")).join(" "));
  }
  const { info } = await document.getMetadata();
  const scripts = await document.getJSActions();
  const pages = document.numPages;
  await task.destroy();
  return {
    pages,
    size,
    text: texts.join("\n").replace(/\s+/g, " "),
    title: String((info as { Title?: string }).Title ?? ""),
    hasScript: scripts !== null,
  };
}
