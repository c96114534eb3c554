export { PinTable } from "./pin-table.tsx";
