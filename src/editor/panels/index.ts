export { FindingsPanel } from "./findings-panel.tsx";
