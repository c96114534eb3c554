export { Button } from "./button.tsx";
export { FileLink } from "./file-link.tsx";
export { Menu, MenuChoices, MenuHeading, MenuItem, MenuRule } from "./menu.tsx";
export { Modal } from "./modal.tsx";
export { RadioOptions } from "./radio-options.tsx";
export { Tip, TipProvider } from "./tip.tsx";
