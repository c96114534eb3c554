export { DiagramBoard } from "./diagram-board.tsx";
