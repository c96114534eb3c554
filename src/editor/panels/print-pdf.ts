/** Hands a PDF to the browser's own print dialog; opens it where a frame can't print. */
export function printPdf(url: string): void {
  const frame = document.createElement("iframe");
  frame.hidden = true;
  frame.src = url;
  frame.addEventListener("load", () => {
    try {
      frame.contentWindow?.focus();
      frame.contentWindow?.print();
    } catch {
      window.open(url, "_blank", "noopener");
    }
  });
  document.body.append(frame);
  // The print dialog holds the frame's document; an hour is longer than anyone leaves it open.
  setTimeout(() => frame.remove(), 3_600_000);
}
