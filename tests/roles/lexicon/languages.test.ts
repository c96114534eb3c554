import { describe, expect, test } from "vitest";
import { LANGUAGES } from "../../../src/roles/lexicon/languages.ts";
import { upperCase } from "../../../src/roles/lexicon/letters.ts";
import { readWord } from "../../../src/roles/lexicon/read-word.ts";
import { tokensOf } from "../../../src/roles/lexicon/tokens.ts";

/** Printed texts and what a mechanic of that language takes them for (common practice, no source). */
const READ: Readonly<Record<string, readonly (readonly [string, string])[]>> = {
  English: [
    ["PWR IN", "supply"],
    ["Key SW", "switched-supply input"],
    ["SENS GND", "sensor-ground"],
    ["Lamp SW", "input"],
    ["12V OUT", "output sensor-supply"],
    ["Valves", "output"],
    ["not used", "unused"],
  ],
  German: [
    ["Dauerplus", "supply"],
    ["KL30", "supply"],
    ["Kl. 15", "switched-supply"],
    ["Kl.31b", "switched-ground"],
    ["Zündung", "switched-supply input"],
    ["ZUENDUNG", "switched-supply input"],
    ["Masse", "ground"],
    ["Sensor-Masse", "sensor-ground"],
    ["LAMPENAUSGANG", "output"],
    ["SCHALTEREINGANG", "input"],
    ["Pumpenrelais", "output"],
    ["Ausg. Lüfter", "output"],
    ["GLUEHKERZEN", "output"],
    ["12V Ausgang", "output sensor-supply"],
    ["Luftmasse", "input"],
    ["nicht belegt", "unused"],
  ],
  French: [
    ["Alim.", "supply"],
    ["+ APRÈS CONTACT", "switched-supply"],
    ["+ APRES CONTACT", "switched-supply"],
    ["Masse", "ground"],
    ["Masse du capteur", "sensor-ground"],
    ["Alimentation de capteur", "sensor-supply"],
    ["Entrée pression", "input"],
    ["SORTIE ELECTROVANNE", "output"],
    ["Feux", "output"],
    ["FREIN", "input output signal"],
    ["Non connecté", "unused"],
  ],
  Spanish: [
    ["Positivo batería", "supply"],
    ["Positivo de contacto", "switched-supply"],
    ["MASA", "ground"],
    ["Tierra del sensor", "sensor-ground"],
    ["Alimentación de sensor", "sensor-supply"],
    ["Señal del sensor", "input"],
    ["SALIDAS LUCES", "output"],
    ["Relé bomba", "output"],
    ["No conectado", "unused"],
  ],
  Italian: [
    ["Alimentazione", "supply"],
    ["Sotto chiave", "switched-supply"],
    ["MASSA", "ground"],
    ["Massa sensori", "sensor-ground"],
    ["Ingresso pulsante", "input"],
    ["USCITA ELETTROVALVOLA", "output"],
    ["Uscite luci", "output"],
    ["Linea dati", "signal"],
    ["Non collegato", "unused"],
  ],
  Portuguese: [
    ["Alimentação", "supply"],
    ["PÓS-CHAVE", "switched-supply"],
    ["Terra", "ground"],
    ["Terra do sensor", "sensor-ground"],
    ["Entrada botão", "input"],
    ["SAIDA FAROL", "output"],
    ["Saídas faróis", "output"],
    ["Não conectado", "unused"],
  ],
  Dutch: [
    ["Voeding", "supply"],
    ["Geschakelde plus", "switched-supply"],
    ["Massa", "ground"],
    ["Sensormassa", "sensor-ground"],
    ["Ingang drukknop", "input"],
    ["Uitgang lampen", "output"],
    ["POMPRELAIS", "output"],
    ["niet aangesloten", "unused"],
  ],
  Swedish: [
    ["Matning", "supply"],
    ["TÄNDLÅS", "switched-supply input"],
    ["TAENDLAAS", "switched-supply input"],
    ["Jord", "ground"],
    ["Jord givare", "sensor-ground"],
    ["IN GIVARE", "input"],
    ["UT LAMPA", "output"],
    ["Utgång relä", "output"],
    ["PUMPRELÄ", "output"],
    ["Ej ansluten", "unused"],
  ],
  Polish: [
    ["Zasilanie", "supply"],
    ["zasilanie po stacyjce", "switched-supply"],
    ["MASA", "ground"],
    ["Masa czujnika", "sensor-ground"],
    ["WEJŚCIE PRZYCISK", "input"],
    ["WEJSCIE", "input"],
    ["Wyjście przekaźnika", "output"],
    ["WY LAMPA", "output"],
    ["niepodłączony", "unused"],
  ],
  Turkish: [
    ["Akü", "supply"],
    ["Kontak artı", "switched-supply"],
    ["ŞASE", "ground"],
    ["Sensör şasesi", "sensor-ground"],
    ["giriş", "input"],
    ["GİRİŞ", "input"],
    ["GIRIS", "input"],
    ["çıkış", "output"],
    ["CIKIS", "output"],
    ["Işık", "output"],
    ["Pompa rölesi", "output"],
    ["BOŞ", "unused"],
  ],
  Japanese: [
    ["電源", "supply"],
    ["IG電源", "switched-supply"],
    ["ＩＧ電源", "switched-supply"],
    ["アース", "ground"],
    ["ｱｰｽ", "ground"],
    ["ｾﾝｻ電源", "sensor-supply"],
    ["センサー アース", "sensor-ground"],
    ["圧力センサ入力", "input"],
    ["スイッチ入力", "input"],
    ["ランプ出力", "output"],
    ["ポンプリレー", "output"],
    ["出力１", "output"],
    ["２４Ｖ", "supply"],
    ["未使用", "unused"],
    ["SHUTSURYOKU", "output"],
  ],
};

const rolesIn = (printed: string) => readWord(printed).map(({ role }) => role);

describe.each(Object.entries(READ))("%s", (_, texts) => {
  test.each(texts)("%s is %s", (printed, roles) => {
    expect(rolesIn(printed).sort()).toEqual(roles.split(" ").sort());
  });
});

test("every language with a table is tried", () => {
  expect(LANGUAGES.map(({ name }) => name)).toEqual(Object.keys(READ));
});

const asPrinted = (word: string) => word.replace("<V>", "12V").replace("<REF>", "5V");

test.each(LANGUAGES)(
  "every word of $name comes out of the text as it stands in the table",
  (one) => {
    for (const word of Object.keys(one.words)) {
      expect(tokensOf(asPrinted(word)).join(" "), word).toBe(upperCase(word));
    }
  },
);

test.each(LANGUAGES)("every word of $name keeps what it means among all the others", (one) => {
  const lost = Object.entries(one.words).flatMap(([word, meanings]) => {
    const found = rolesIn(asPrinted(word));
    const missing = meanings.filter(({ role }) => !found.includes(role));
    return missing.length > 0 ? [word] : [];
  });
  // Too short to tell the language, or an English word that says nothing of a role.
  expect(lost.filter((word) => !/^[\p{L}]{2}$/u.test(word) && !isMuteEnglish(word))).toEqual([]);
});

const isMuteEnglish = (word: string) =>
  [word, word.replace(/S$/, "")].some((one) => LANGUAGES[0]?.words[one]?.length === 0);

describe("a word that means different things, or nothing certain", () => {
  test.each(["E", "A", "S", "PE", "WE", "WY", "UT", "MIN", "ON", "L", "APC", "BOS", "AKU"])(
    "%s alone is not guessed",
    (printed) => expect(rolesIn(printed)).toEqual([]),
  );

  test.each(["CONTACT", "SUMMER", "MAGNET", "TEMPERATURE", "RESERVE", "ALARM", "CHARGE"])(
    "%s may be English and say nothing of a role",
    (printed) => expect(rolesIn(printed)).toEqual([]),
  );

  test.each([
    ["クランプ", "a clamp"],
    ["ファンクション", "a function"],
    ["LUFTMASSENMESSER", "an air mass meter"],
    ["STRASSE", "a street"],
  ])("%s, %s, is not read by the part of it that happens to be a word", (printed) => {
    expect(rolesIn(printed)).toEqual([]);
  });

  test("a sign leaves the rail possible beside the word", () => {
    expect(rolesIn("POMPE+").sort()).toEqual(["output", "supply"]);
    expect(rolesIn("POMPE-").sort()).toEqual(["ground", "output"]);
  });

  test("words of two languages in one text keep what each means", () => {
    expect(rolesIn("IN POMPE").sort()).toEqual(["input", "output"]);
  });
});
