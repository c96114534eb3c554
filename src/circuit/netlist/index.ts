export { type Netlist, netlistOf } from "./netlist.ts";
