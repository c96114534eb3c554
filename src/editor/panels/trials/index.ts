export { TrialsPanel } from "./trials-panel.tsx";
