import { type Ageing, age } from "../ageing/age.ts";
import { drawSweeperPage } from "./page.ts";

export const SWEEPER_IMAGE = "images/sweeper-sheet-7.jpg";

/** The printed sheet after years in a cab and once over a photocopier, as JPEG bytes. */
export const sweeperScan = (ageing: Ageing): Uint8Array => age(drawSweeperPage(), ageing);
