/** What the columns of a list are taken for: by the guide's word, by their cells, by their names. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { MEANINGS } from "../../server/src/model/list/partsList.ts";
import { drawn, kit, messages } from "../checks/kit.ts";
import { columns, findings, lineOf, lines, names, readList, readMarkdown } from "./reading.ts";

describe("headers in five languages are understood", () => {
  // Words of the trade as public lists of these languages have them: common practice.
  test.each([
    [
      "English",
      "Item,Designator,Qty,Value,Tolerance,Power,Footprint,Height,Description,MPN,Board,Side,Bag,Notes",
    ],
    [
      "German",
      "Pos,Bezeichner,Anzahl,Wert,Toleranz,Leistung,Bauform,Bauhöhe,Beschreibung,Bestellnummer,Platine,Seite,Tüte,Bemerkung",
    ],
    [
      "French",
      "Poste,Repère,Quantité,Valeur,Tol,Puissance,Boîtier,Hauteur,Description,Référence fabricant,Carte,Face,Sachet,Remarques",
    ],
    [
      "Spanish",
      "Partida,Referencia,Cantidad,Valor,Tolerancia,Potencia,Encapsulado,Altura,Descripción,Número de parte,Placa,Cara,Bolsa,Observaciones",
    ],
    [
      "Dutch",
      "Volgnummer,Referentie,Aantal,Waarde,Tolerantie,Vermogen,Behuizing,Hoogte,Omschrijving,Bestelnummer,Print,Zijde,Zakje,Opmerkingen",
    ],
  ])("%s", (_, header) => {
    const rows = [
      '1,"R1, R2",2,10k,1 %,0.25 W,Axial,2.5 mm,film resistor,X-17,main,top,A,fit flat',
      "2,C1,1,100n,10 %,,Disc,4 mm,ceramic capacitor,X-18,main,bottom,A,",
      "3,Q1,1,BC547B,,,TO-92,5 mm,transistor,X-19,main,top,B,",
    ];
    const list = readList([header, ...rows].join("\n"));
    const titles = header.split(",");
    expect(columns(list)).toEqual({
      item: titles[0],
      designator: titles[1],
      quantity: titles[2],
      value: titles[3],
      tolerance: titles[4],
      power: titles[5],
      package: titles[6],
      height: titles[7],
      description: titles[8],
      "part number": titles[9],
      board: titles[10],
      side: titles[11],
      bag: titles[12],
      notes: titles[13],
    });
    expect(lineOf(list, "R2")).toMatchObject({
      quantity: 2,
      value: { amount: 10e3, unit: "Ω" },
      tolerance: "1 %",
      power: { amount: 0.25, unit: "W" },
      height: 2.5,
      board: "main",
      side: "top",
    });
    expect(lineOf(list, "C1").side).toBe("bottom");
    expect(findings(list)).toEqual([]);
  });

  test.each([
    ["DNP", "x", false],
    ["Do not place", "yes", false],
    ["Exclude from BOM", "1", false],
    ["nicht bestückt", "ja", false],
    ["Non monté", "oui", false],
    ["No montar", "sí", false],
    ["Niet plaatsen", "ja", false],
    ["Fitted", "no", false],
    ["Fitted", "yes", true],
    ["Bestückt", "nein", false],
    ["Monté", "non", false],
    ["Montado", "no", false],
    ["Geplaatst", "nee", false],
  ])("%s: %s", (header, cell, fitted) => {
    const list = readList(`Ref,Value,${header}\nR1,10k,${cell}\nR2,22k,\n`);
    expect(lineOf(list, "R1").fitted).toBe(fitted);
  });

  test("and a column of crosses for what is fitted leaves the rest out", () => {
    const list = readList("Ref,Value,Fitted\nR1,10k,x\nR2,22k,\nR3,33k,x\n");
    expect(list.lines.filter((line) => !line.fitted).map(names)).toEqual(["R2"]);
  });

  test("for spares, options and lengths", () => {
    const list = readList(
      "Ref,Qty,Value,Spare,Optional,Voltage,Current\nQ1,4,BC547B,3,,45 V,0.1 A\nR1,1,10k,,x,,\n,820 mm,CuL 1.0,,,,\nR2,1 + 1,22k,,,,\n",
    );
    expect(lineOf(list, "Q1")).toMatchObject({
      spare: 3,
      quantity: 4,
      voltage: { amount: 45, unit: "V" },
      current: { amount: 0.1, unit: "A" },
    });
    expect(lineOf(list, "R1").optional).toBe(true);
    expect(list.lines[2]!.metres).toBe(0.82);
    expect(lineOf(list, "R2")).toMatchObject({ quantity: 2, spare: 1 });
    expect(findings(list)).toEqual([]);
  });
});

test("a cross makes a whole line spare, and heights may be in mils or inches", () => {
  const list = readList(
    "Ref,Qty,Value,Spare,Height\nR1,1,10k,,40 mil\n,4,M3x6,x,\n,2,M4x6,yes,\n,2,M5x6,no,\nC1,1,1u,,0.2 in\n",
  );
  expect(list.lines.map(({ spare }) => spare)).toEqual([undefined, 4, 2, undefined, undefined]);
  expect([lineOf(list, "R1").height, lineOf(list, "C1").height]).toEqual([1.016, 5.08]);
});

describe("cells tell before names do", () => {
  test("which column holds the designators", () => {
    const list = readList("Component,Part,Qty\n10k,R1 R2,2\n100n,C1,1\nBC547B,Q1,1\n");
    expect(columns(list)).toEqual({ designator: "Part", quantity: "Qty", value: "Component" });
    const other = readList("Part,Component,Qty\n10k,R1 R2,2\n100n,C1,1\nBC547B,Q1,1\n");
    expect(columns(other)).toEqual({ designator: "Component", quantity: "Qty", value: "Part" });
  });

  test("order numbers of a designator's form are none", () => {
    const list = readList(
      "Code,Comment,Place\nC14663,10k,R1\nC25804,22k,R2\nC1525,100n,C1\nC45783,22u,C2\n",
    );
    expect(columns(list)).toMatchObject({ designator: "Place", value: "Comment" });
  });

  test("numbers that agree with the lists are the quantity, whatever their name", () => {
    const list = readList(
      'Ref,Value,Pins,Kit\n"R1, R2, R3",10k,2,3\n"C1, C2",1n,2,2\nU1,NE555,8,1\nJ1,header,4,1\n',
    );
    expect(columns(list)).toMatchObject({ quantity: "Kit" });
    expect(findings(list)).toEqual([]);
  });

  test("a list without any header has its columns by their cells", () => {
    const list = readList("R1,10k,1\nR2-R4,22k,3\nC1,100n,1\n");
    expect(lines(list)).toEqual(["R1", "R2 R3 R4", "C1"]);
    expect(lineOf(list, "R3")).toMatchObject({ quantity: 3, value: { amount: 22e3, unit: "Ω" } });
    expect(list.columns.map(({ meaning }) => meaning)).toEqual(["designator", "value", "quantity"]);
  });

  test("each column says in a sentence what it was taken for and why", () => {
    const list = readList("Ref,Value,Supplier,Zzz\nR1,10k,shop,q\nR2,22k,shop,q\n");
    expect(list.columns.map(({ header, meaning, why }) => [header, meaning, why])).toEqual([
      ["Ref", "designator", "100 % of its cells are designators, and its name says so"],
      ["Value", "value", "100 % of its cells beside resistors, capacitors and coils are values"],
      ["Supplier", undefined, "it is known by its name, but tells nothing that is needed here"],
      ["Zzz", undefined, "neither its name nor its cells tell what it is"],
    ]);
    const { start, end } = list.columns[2]!.headerSpan!;
    expect(list.text.slice(start, end)).toBe("Supplier");
  });

  test("the order of the columns does not matter", () => {
    const header = ["Item", "Designator", "Qty", "Value", "Footprint", "Description"];
    const rows = [
      ["1", '"R1, R2"', "2", "10k", "R_Axial", "film"],
      ["2", '"C1, C2, C3"', "3", "100n", "C_Disc", "ceramic"],
      ["3", "Q1", "1", "BC547B", "TO-92", "NPN"],
      ["4", "D1", "1", "1N4148", "DO-35", "diode"],
    ];
    const expected = columns(readList([header, ...rows].map((row) => row.join()).join("\n")));
    const order = fc.shuffledSubarray([0, 1, 2, 3, 4, 5], { minLength: 6 });
    fc.assert(
      fc.property(order, fc.constantFrom(",", ";", "\t"), (places, delimiter) => {
        const text = [header, ...rows]
          .map((row) => places.map((place) => row[place]).join(delimiter))
          .join("\n");
        expect(columns(readList(text))).toEqual(expected);
      }),
    );
  });
});

describe("the guide's columns key", () => {
  const LIST = "Ref,Comment,Name,Size\nR1,10k,47k,A\nR2,22k,1k,B\nC1,1n,2n,C\n";

  test("comes before cells and names", () => {
    expect(columns(readList(LIST))).toMatchObject({ value: "Comment" });
    const list = readList(LIST, { columns: { value: "Name" } });
    expect(columns(list)).toMatchObject({ value: "Name" });
    expect(lineOf(list, "R1").value).toEqual({ amount: 47e3, unit: "Ω" });
    expect(list.overrideProblems).toEqual([]);
    const why = list.columns.find(({ header }) => header === "Name")?.why;
    expect(why).toBe("the guide's columns key says so");
  });

  test.each([["comment"], [" Comment "], ["B"], ["2"]])("finds its column as %o", (name) => {
    const list = readList(LIST, { columns: { notes: name } });
    expect(columns(list)).toMatchObject({ notes: "Comment" });
    expect(list.overrideProblems).toEqual([]);
  });

  test("can name any meaning", () => {
    for (const meaning of MEANINGS) {
      const list = readList(LIST, { columns: { [meaning]: "Size" } });
      if (meaning === "designator") continue;
      expect(columns(list), meaning).toMatchObject({ [meaning]: "Size", designator: "Ref" });
    }
  });

  test("can name the designators' column, where the words in it are designators", () => {
    const list = readList("Place,What,Qty\nALARM,LED,1\nUSB,socket,1\n", {
      columns: { designator: "Place" },
    });
    expect(lines(list)).toEqual(["ALARM", "USB"]);
  });

  test("finds columns under headers of a language that is not known", () => {
    const list = readList("Metronom,,\n,,\nOznaczenie,Typ,Sztuk\nR1 R2,10k,2\nQ1,BC547B,1\n", {
      columns: { quantity: "Sztuk", value: "Typ", designator: "Oznaczenie" },
    });
    expect(columns(list)).toEqual({ designator: "Oznaczenie", value: "Typ", quantity: "Sztuk" });
    expect(list.overrideProblems).toEqual([]);
    expect(lines(list)).toEqual(["R1 R2", "Q1"]);
  });

  test("makes no header of a row that holds a column's number", () => {
    const list = readList("Ref,Qty,Value\nR1,1,10k\n,3,screw\n,10,nut\n", {
      columns: { value: "3" },
    });
    expect(lines(list)).toEqual(["R1", "(screw)", "(nut)"]);
  });

  test("that names no column is told with the headers there are", () => {
    const list = readList(LIST, { columns: { value: "Wert", package: "Size" } });
    expect(list.overrideProblems).toEqual([
      { meaning: "value", name: "Wert", candidates: ["Ref", "Comment", "Name", "Size"] },
    ]);
    // The guess stands in.
    expect(columns(list)).toMatchObject({ value: "Comment", package: "Size" });
  });

  test("counts where one of several sections has the column", () => {
    const list = readList("Ref,Value\nR1,10k\n,\nRef,Type\nQ1,BC547B\nQ2,BC557B\n", {
      columns: { value: "Type" },
    });
    expect(list.overrideProblems).toEqual([]);
    expect(lineOf(list, "Q1").cells.value?.text).toBe("BC547B");
  });

  test("that names no column is a finding at the guide's entry", async () => {
    const fixture = kit(
      "1. [R1]",
      "Ref,Comment\nR1,10k",
      "columns: { value: Coment }\n                  ^^^^^^ front-matter\n",
    );
    const { found, expected } = await drawn(fixture, "front-matter");
    expect(found).toHaveLength(1);
    expect(found).toEqual(expected);
    expect(await messages(fixture, "front-matter")).toEqual([
      expect.stringContaining("It has: Ref, Comment. Did you mean Comment?"),
    ]);
  });
});

describe("rows that are no parts", () => {
  test("titles between sections are none, in any column", () => {
    const list = readList(
      "Ref,Qty,Value\n=== Resistors ===,,\nR1,1,10k\n---,---,---\nCapacitors:,,\nC1,1,1n\n",
    );
    expect(lines(list)).toEqual(["R1", "C1"]);
    expect(findings(list)).toEqual([]);
  });

  test.each(["Total", "Summe", "Gesamt", "Totaal", "Suma", "Grand total", "Subtotal"])(
    "%s ends what is listed",
    (word) => {
      const list = readList(`Ref,Qty,Value\nR1,1,10k\nC1,1,1n\n${word},2,\n`);
      expect(lines(list)).toEqual(["R1", "C1"]);
      expect(findings(list)).toEqual([]);
    },
  );

  test("hardware may stand in the designator column, or leave it empty", () => {
    const list = readList(
      "Ref,Qty,Value,Description\nR1,1,10k,\nM3x10,6,,screw\nPCB,1,rev C,\nKnobs,4,,\n,2,,washer M3\nHW,3,,spacer\n",
    );
    expect(lines(list)).toEqual(["R1", "(screw)", "(PCB)", "(Knobs)", "(washer M3)", "(spacer)"]);
    expect(list.lines.map(({ quantity }) => quantity)).toEqual([1, 6, 1, 4, 2, 3]);
    expect(findings(list)).toEqual([]);
  });

  test("a list of hardware alone is a list", () => {
    const list = readList("Qty,Description\n6,Screw M3x10\n2,Spacer 8 mm\n");
    expect(lines(list)).toEqual(["(Screw M3x10)", "(Spacer 8 mm)"]);
  });

  test("tables of a Markdown file that list nothing are left alone", () => {
    const list = readMarkdown(
      "# Kit\n\n| Pin | Signal |\n|--|--|\n| 1 | GND |\n| 2 | VCC |\n\n| Ref | Value |\n|--|--|\n| R1 | 10k |\n\n| Ref | Value |\n|--|--|\n| C1 | 1n |\n",
    );
    expect(lines(list)).toEqual(["R1", "C1"]);
    expect(findings(list)).toEqual([]);
  });
});
