/** Names that would land outside their own folder, on one system or another. */
export const CLIMBING = [
  "../secret.png",
  "images/../../secret.png",
  "/etc/secret.png",
  "C:/secret.png",
  "C:secret.png",
  "..\\secret.png",
  "images\\secret.png",
  "\\\\server\\share\\secret.png",
  "file:///etc/secret.png",
  "https://example.com/secret.png",
  "images/a.png\u0000.txt",
  "images//a.png",
  "..",
  ".",
  "images/..",
];
