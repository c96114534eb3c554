export { DiagramBoard } from "../boards/diagram/index.ts";
export { CavityDetails, PlugBoard } from "../boards/plug/index.ts";
export { importPicture } from "../import/index.ts";
export { FindingsPanel, ReadingPad, ReadingsList, SheetDialog } from "../panels/index.ts";
export { PinTable } from "../table/index.ts";
export const PartDetails = () => <p>Part details</p>;
export const DiagramList = () => <p>Diagram list</p>;
