export { ChangesDialog, ChangesPanel } from "./changes-panel.tsx";
export { FindingsPanel } from "./findings-panel.tsx";
export { FirstChecks } from "./first-checks.tsx";
export { ChosenCard, OperatePanel } from "./operate/index.ts";
export { ReadingPad } from "./reading-pad.tsx";
export { ReadingsList } from "./readings-list.tsx";
export { SheetDialog } from "./sheet-dialog.tsx";
