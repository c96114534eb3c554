export { PartDetails } from "./details/part-details.tsx";
export { DiagramBoard } from "./diagram-board.tsx";
export { DiagramList } from "./diagram-list.tsx";
