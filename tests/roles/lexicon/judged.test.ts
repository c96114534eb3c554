import { expect, test } from "vitest";
import { checkJob } from "../../../src/check/index.ts";
import { lampModule, matched } from "../../support/check-example.ts";

/** A module with a feed, a ground and a lamp on pins 1, 2 and 3, in words of each language. */
const RIGHT = {
  German: ["Dauerplus", "Masse", "Lampenausgang"],
  French: ["Alimentation", "MASSE", "Sortie lampe"],
  Spanish: ["Alimentación", "Tierra", "SALIDA LAMPARA"],
  Italian: ["Alimentazione", "Massa", "Uscita lampada"],
  Portuguese: ["Alimentação", "Terra", "SAÍDA"],
  Dutch: ["Voeding", "Massa", "Uitgang lamp"],
  Swedish: ["Matning", "Jord", "UT LAMPA"],
  Polish: ["Zasilanie", "Masa", "WYJŚCIE"],
  Turkish: ["Besleme", "Şase", "ÇIKIŞ"],
  Japanese: ["電源", "ｱｰｽ", "ランプ出力"],
} as const;

const judged = ([feed, ground, output]: readonly string[]) => {
  const { job } = matched(lampModule({ "1": feed ?? "", "2": ground ?? "", "3": output ?? "" }));
  return checkJob(job, "M1").roles.map(({ verdict }) => verdict);
};

test.each(Object.entries(RIGHT))("right words in %s agree with the circuit", (_, words) => {
  expect(judged(words)).toEqual(["agrees", "agrees", "agrees"]);
});

test.each(Object.entries(RIGHT))("words of %s shifted by one are contradicted", (_, words) => {
  const [feed, ground, output] = words;
  expect(judged([output, feed, ground])).toEqual(["contradicted", "contradicted", "contradicted"]);
});

test("words that may be another language's, or nothing, contradict nothing", () => {
  for (const words of [
    ["E", "A", "S"],
    ["WY", "UT", "MIN"],
    ["CONTACT", "SUMMER", "RESERVE"],
  ])
    expect(judged(words)).toEqual(["unproven", "unproven", "unproven"]);
});
