export { CavityDetails } from "./cavity-details.tsx";
export { ColourSwatch } from "./colour-swatch.tsx";
export { PlugBoard } from "./plug-board.tsx";
