import { type Explorer, positionsOfBits, RELAY } from "../circuit/index.ts";
import { listAnd, listOr } from "../roles/index.ts";

/** "switch S1 in run or start and relay K2 pulled in"; "every switch as it will" for no condition. */
export function conditionInWords(explorer: Explorer, cube: readonly number[]): string {
  const words: string[] = [];
  for (let i = 0; i < cube.length; i += 2) {
    const variable = explorer.variables.at(cube[i] as number);
    const bits = cube[i + 1] as number;
    switch (variable.is) {
      case "switch":
        words.push(`switch ${variable.part.id} in ${listOr(positionsOfBits(variable.part, bits))}`);
        break;
      case "relay":
        words.push(`relay ${variable.part} ${bits === RELAY.pulled ? "pulled in" : "at rest"}`);
        break;
      case "own-pin":
        words.push(`pin ${variable.pin} driven`);
        break;
      case "engine":
        words.push("the engine running");
        break;
      case "beyond":
        words.push(`${variable.part} live`);
        break;
    }
  }
  return words.length === 0 ? "every switch in any position" : listAnd(words);
}
