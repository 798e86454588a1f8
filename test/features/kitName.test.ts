/** What a kit is called by the names of its files. */
import { expect, test } from "vitest";
import { kitName, namesOnPath, tellingWords } from "../../server/src/features/start/kitName.ts";

test.each([
  ["heron-parts.csv", "Heron"],
  ["two_tone_generator_bom.xlsx", "Two tone generator"],
  ["BOM-wren-v1.2.csv", "Wren v1.2"],
  ["wren/bom.csv", "Wren"],
  ["wren/Stückliste.csv", "Wren"],
  ["wren/Stu\u0308ckliste.csv", "Wren"],
  ["wren/parts-list.csv", "Wren"],
  ["wren/bill of materials.ods", "Wren"],
  ["wren/liste des composants.csv", "Wren"],
  ["wren/lista_de_componentes.csv", "Wren"],
  ["wren/onderdelenlijst.csv", "Wren"],
  ["wren/hardware/bom_rev3.csv", "Wren"],
  ["a/b/docs/hardware/bom.csv", undefined],
  ["bom.csv", undefined],
  ["/bom.csv", undefined],
])("%s lists the parts of %s", (path, name) => {
  expect(kitName(namesOnPath(path))).toBe(name);
});

test("Only what tells something becomes the name of the guide's file", () => {
  expect(tellingWords("wren_main_bom")).toEqual(["wren", "main"]);
  expect(tellingWords("parts-v2")).toEqual([]);
});
