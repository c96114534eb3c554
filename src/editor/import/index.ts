export { type ImportInto, importPicture } from "./import-picture.ts";
export { PagePicker } from "./page-picker.tsx";
export { sniff } from "./sniff.ts";
export { useCamera, useFileInput } from "./use-file-input.tsx";
export { type PictureImport, usePictureImport } from "./use-picture-import.tsx";
