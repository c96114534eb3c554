export { ChosenCard } from "./chosen-card.tsx";
export { OperatePanel } from "./operate-panel.tsx";
