export { Button } from "./button.tsx";
export { Menu, MenuChoices, MenuHeading, MenuItem, MenuRule } from "./menu.tsx";
export { Modal } from "./modal.tsx";
export { Tip, TipProvider } from "./tip.tsx";
