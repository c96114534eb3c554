export { FindingsPanel } from "./findings-panel.tsx";
export { ReadingPad } from "./reading-pad.tsx";
export { ReadingsList } from "./readings-list.tsx";
export { SheetDialog } from "./sheet-dialog.tsx";
