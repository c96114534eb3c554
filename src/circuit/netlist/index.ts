export { stateWords } from "./head.ts";
export { type Netlist, netlistOf, spiceDeck } from "./netlist.ts";
