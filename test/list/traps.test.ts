/** The traps that real parts lists set, each in a small invented list. */
import { describe, expect, test } from "vitest";
import { bodyHeight } from "../../server/src/trade/bodyHeight.ts";
import {
  columns,
  findings,
  lineOf,
  lines,
  names,
  readList,
  readMarkdown,
  utf16,
} from "./reading.ts";

describe("A file is read in spite of trap", () => {
  test.each(["parts.csv", "parts.tsv"])("1: UTF-16 with tabs, called %s", (name) => {
    const text = 'Nr\tTyp\tReferenz\tAnzahl\n"1"\t"47 kΩ"\t"R1,R2"\t"2"\n"2"\t"33 µF"\t"C1"\t"1"\n';
    const list = readList(utf16(text), {}, name);
    expect(list.encoding).toBe("utf-16le");
    expect(lines(list)).toEqual(["R1 R2", "C1"]);
    expect(list.lines.map((line) => line.value)).toEqual([
      { amount: 47e3, unit: "Ω" },
      { amount: 33e-6, unit: "F" },
    ]);
    const { start, end } = list.lines[0]!.designators[1]!.span;
    expect(text.slice(start, end)).toBe("R2");
  });

  test("2: semicolons with more commas among them, and rows longer than their header", () => {
    const list = readList(
      '"No";"Designator";"Package";"Qty";"Designation"\n' +
        '1;"R1,R2,R3,R4,R5";"Axial, 7 mm";5;"10k";;\n' +
        '2;"C1,C2,C3";"Disc, 5 mm, ceramic";3;"22n";;\n' +
        '3;"Q1,Q2";"TO-92";2;"BC337";;\n',
    );
    expect(lines(list)).toEqual(["R1 R2 R3 R4 R5", "C1 C2 C3", "Q1 Q2"]);
    expect(list.lines.map((line) => line.cells.package?.text)).toEqual([
      "Axial, 7 mm",
      "Disc, 5 mm, ceramic",
      "TO-92",
    ]);
    expect(findings(list)).toEqual([]);
  });

  const BODY = 'Ref,Qty,Value\n"R1, R2",2,1k\nC1,1,10n\n';
  test.each([
    [
      "a title, its licence, a link and a line of commas",
      "Metronome,,\nFree to copy,,\nkit.example/m,,\n,,\n",
      6,
    ],
    [
      "a program's banner",
      '"Source:","metronome.sch"\n"Date:","1 May"\n"Tool:","T 7"\n"Made by:","x.py"\n"Component Count:","3"\n',
      7,
    ],
    [
      "blank lines and a section's title",
      '"Source:","m.sch"\n"Date:","1.5."\n"Tool:","T"\n"By:","x"\n"Component Count:","3"\n\n"Collected parts:"\n\n',
      10,
    ],
    ["one title", "Metronome board\n", 3],
  ])("3: the header below %s", (_, preamble, first) => {
    const list = readList(preamble + BODY);
    expect(lines(list)).toEqual(["R1 R2", "C1"]);
    expect(list.lines[0]!.row).toBe(first);
    expect(columns(list)).toEqual({ designator: "Ref", quantity: "Qty", value: "Value" });
    expect(findings(list)).toEqual([]);
  });

  test("4: the header repeated above each section", () => {
    const list = readList(
      "Resistors,,\nPart,Qty,Value\nR1-R3,3,10k\nR4,1,47k\n,,\n" +
        "Capacitors,,\nPart,Qty,Value\nC1,1,100n\n,,\n" +
        "Semiconductors,,\nPart,Qty,Type\nD1,1,1N4148\nQ1,1,BC547B\n",
    );
    expect(lines(list)).toEqual(["R1 R2 R3", "R4", "C1", "D1", "Q1"]);
    expect(lineOf(list, "Q1").cells.value?.text).toBe("BC547B");
    expect(findings(list)).toEqual([]);
  });

  test("20: blanks, wide brackets, nameless and misspelt headers, German and Spanish", () => {
    const spaced = readList('Reference, Value, Footprint\n"R1","10k","0805"\n"C1","1n","0805"\n');
    expect(columns(spaced)).toEqual({
      designator: "Reference",
      value: "Value",
      package: "Footprint",
    });
    const wide = readList(
      'Comment,Designator,Footprint,Order code（optional）,\n10k,"R1, R2",0805,,x7\n1n,C1,0805,,\n',
    );
    expect(columns(wide)).toMatchObject({ designator: "Designator", value: "Comment" });
    expect(lines(wide)).toEqual(["R1 R2", "C1"]);
    const misspelt = readList(
      'Comment,Descripton,Desginator,Footprnt,Quantitiy,,\nLED,red,"D1, D2",T1,2,A17,B3\n10k,film,R1,AX7,1,A2,\n',
    );
    expect(lines(misspelt)).toEqual(["D1 D2", "R1"]);
    expect(misspelt.lines.map((line) => line.quantity)).toEqual([2, 1]);
    const german = readList("Stück;Wert;Bauform;Bezeichner\n2;4,7k;0207;R1, R2\n1;2,2n;RM5;C1\n");
    expect(columns(german)).toEqual({
      quantity: "Stück",
      value: "Wert",
      package: "Bauform",
      designator: "Bezeichner",
    });
    expect(lineOf(german, "R1").value).toEqual({ amount: 4700, unit: "Ω" });
    const spanish = readMarkdown(
      "Tipo | Referencia | Descripción | Cantidad\n--- | --- | --- | ---\nResistencia | R1 - R3 | 10 kohm, axial | 3\nZócalo | U1 | 8 pines | 1\nAmplificador | U1 | doble, 8 pines | 1\n",
    );
    expect(lines(spanish)).toEqual(["R1 R2 R3", "U1", "U1"]);
    expect(lineOf(spanish, "R2").value).toEqual({ amount: 10e3, unit: "Ω" });
    expect(findings(spanish)).toEqual([]);
  });

  test("21: cells that do not belong to their header", () => {
    const list = readList(
      '"Ref","Value","Footprint","Sheet"\n"C1","100n","1","2"\n"C2","100n","1","2"\n"U1","4017","",""\n',
    );
    expect(columns(list)).toEqual({ designator: "Ref", value: "Value" });
    const column = list.columns.find(({ header }) => header === "Footprint");
    expect(column?.why).toContain("mere numbers");
  });
});

describe("Designators are read in spite of trap", () => {
  test("5: a prefix that is carried on", () => {
    const list = readList(
      'Part #,Qty,Value\n"C1,3,6,7,8",5,100n\n"R2-3, R7, R10-12",6,330\n"R20,21",2,1k\n',
    );
    expect(lines(list)).toEqual(["C1 C3 C6 C7 C8", "R2 R3 R7 R10 R11 R12", "R20 R21"]);
    expect(findings(list)).toEqual([]);
    const { start, end } = list.lines[0]!.designators[2]!.span;
    expect(list.text.slice(start, end)).toBe("6");
  });

  test("6: ranges in their many spellings", () => {
    const list = readList(
      "Ref,Qty,Value\nC1 - C4,4,100n\nC5 to C9,5,10n\nU8 - U11,4,74HC00\nR1–R3,3,1k\nR4..R6,3,2k\nR7 bis R9,3,3k\nR10…R12,3,4k\nR13—15,3,5k\nR16 t/m R18,3,6k\nR19 à R21,3,7k\n",
    );
    expect(list.lines.map((line) => line.designators.length)).toEqual([
      4, 5, 4, 3, 3, 3, 3, 3, 3, 3,
    ]);
    expect(names(list.lines[7])).toBe("R13 R14 R15");
    expect(findings(list)).toEqual([]);
  });

  test("7: lists parted by blanks, in any order", () => {
    const list = readList(
      "Id,Ref,Qty,Value\n1,C9 C1 C4,3,100n\n7,R2 R16 R10 R3,4,220\n8,J1,1,header\n",
    );
    expect(lines(list)).toEqual(["C9 C1 C4", "R2 R16 R10 R3", "J1"]);
  });

  test("8: lists of commas only", () => {
    const list = readList(
      'Id;Designator;Qty;Name\n1;"R1,R2";2;10k\n2;",,,";4;Knob ticks\n3;",,,,,,";7;Jack hole\n',
    );
    expect(lines(list)).toEqual(["R1 R2", "(Knob ticks)", "(Jack hole)"]);
    expect(findings(list)).toEqual(["designator-syntax 3: ,,,", "designator-syntax 4: ,,,,,,"]);
    expect(list.lines[1]!.quantity).toBe(4);
  });

  test("9: a list that goes on in the next row, its count on the last", () => {
    const list = readList(
      'RefDes,Qty,Value\n"C1, C2, C3,",,\n"C4, C5,",,\nC6,6,100n\n"R1, R2,",,\nR3,3,4k7\nR4,1,1k\n',
    );
    expect(lines(list)).toEqual(["C1 C2 C3 C4 C5 C6", "R1 R2 R3", "R4"]);
    expect(list.lines[0]).toMatchObject({ row: 2, quantity: 6 });
    expect(findings(list)).toEqual([]);
  });

  test("13: a designator on two lines is a finding", () => {
    const list = readList("Ref,Qty,Value\nR1,1,10k\nR2,1,22k\nR1,1,47k\n");
    expect(findings(list)).toEqual(["repeated-designator 4: R1"]);
    const { other } = list.problems[0]!;
    expect(list.text.slice(other!.start, other!.end)).toBe("R1");
    expect(list.problems[0]!.message).toContain("line 2");
  });

  test.each([
    ["on two boards", "Ref,Qty,Value,Board\nR1,1,10k,main\nR1,1,10k,keys\n"],
    [
      "as chip and socket",
      "Ref,Qty,Value,Description\nU1,1,TL072,dual amplifier\nU1,1,DIP-8,IC socket\n",
    ],
    [
      "as a chip with the remark that it gets a socket, and the socket",
      "Qty,Part,Ref,Notes\n1,555 timer,IC1,+ 8 pin socket\n1,8 pin DIL socket,(IC1),\n",
    ],
    ["in two variants", "Ref,Qty,Value\nR1,1,10k\nR1,0,12k\n"],
    ["as alternatives", "Ref,Qty,Value,Notes\nQ1,1,BS170,\nQ1,1,2N7000,alternative\n"],
  ])("13: a designator %s is none", (_, text) => {
    expect(findings(readList(text))).toEqual([]);
  });

  test("14: the whole list twice is read once", () => {
    const body = "R1,1,10k\nR2,1,22k\nC1,1,100n\nU1,1,NE555\n";
    const list = readList(`Ref,Qty,Value\n${body}${body}`);
    expect(lines(list)).toEqual(["R1", "R2", "C1", "U1"]);
    expect(list.problems.map(({ code }) => code)).toEqual(["repeated-designator"]);
    expect(list.problems[0]!.message).toContain("from line 2 to line 5");
  });

  test("15: rows without designators are hardware, a total is none", () => {
    const list = readList(
      "Ref,Qty,Value,Description\nR1,1,10k,resistor\n,1,,metal box\n,4,,rubber foot\n,2 m,,hook-up wire\n,8,,\n",
    );
    expect(lines(list)).toEqual(["R1", "(metal box)", "(rubber foot)", "(hook-up wire)"]);
    expect(list.lines.map(({ quantity, metres }) => metres ?? quantity)).toEqual([1, 1, 4, 2]);
    const total = readList("Ref,Qty,Value\nR1,1,10k\nR2,1,22k\nTotal,2,\n");
    expect(lines(total)).toEqual(["R1", "R2"]);
    expect(findings(total)).toEqual([]);
  });

  test("16: text in the designator column", () => {
    const list = readList(
      "Ref,Qty,Value\nPCB,1,rev B\nR1,1,10k\nJumper for the headers,3,Jumper\nR2 see page four,1,22k\n100n,1,100n\nR3 (can be left out),1,1k\n",
    );
    expect(lines(list)).toEqual(["(PCB)", "R1", "(Jumper for the headers)", "R2", "(100n)", "R3"]);
    expect(findings(list)).toEqual([
      "designator-syntax 5: see page four",
      "designator-syntax 6: 100n",
    ]);
    expect(lineOf(list, "R3")).toMatchObject({ fitted: true, optional: true });
  });

  test("17: odd designators", () => {
    const list = readList(
      "Ref,Qty,Value\nALARM,1,LED red\nUSB,1,socket B\nU$2,1,20\n!RESET!,1,pad\nD0,1,1N4148\nICSP,1,header\nBUS-IN1,1,header\nR1,1,1k\n*,1,screw\n",
    );
    expect(lines(list)).toEqual([
      "ALARM",
      "USB",
      "U$2",
      "!RESET!",
      "D0",
      "ICSP",
      "BUS-IN1",
      "R1",
      "(*)",
    ]);
    expect(findings(list)).toEqual([]);
  });

  test("18: letters that lie", () => {
    const list = readList(
      'Ref,Qty,Value,Package\n"R4, R5",2,10kB,POT_VERTICAL\n"R1, R2, C13",3,1k,0207\nC1,1,10n,RM5\n',
    );
    expect(lines(list)).toEqual(["R4 R5", "R1 R2 C13", "C1"]);
    expect(list.lines.map((line) => line.value)).toEqual([
      { amount: 10e3, unit: "Ω" },
      { amount: 1e3, unit: "Ω" },
      { amount: 10e-9, unit: "F" },
    ]);
  });

  test("25: four lists in one file, alternatives in footnotes, numbers in no order", () => {
    const list = readList(
      "Sensor board,,\nDesignator,Name,Qty\nR1,10k,1\nC1,1n,1\n,,\nDriver,,\nDesignator,Name,Qty\nR11,22k,1\nQ11,BC337,1\n,,\n" +
        "Power,,\nDesignator,Name,Qty\nD21,1N4007,1\n,,\nCase,,\nDesignator,Name,Qty\n,Screw M3x6,4\n,Box,1\n",
    );
    expect(lines(list)).toEqual(["R1", "C1", "R11", "Q11", "D21", "(Screw M3x6)", "(Box)"]);
    const either = readMarkdown(
      "| Refs | Qty | Value | Description |\n|--|--|--|--|\n| R9, R7 | 2 | A1M | \\*Potentiometer, 9 mm, or: |\n| R8, R6 | 2 | A1M | \\*Potentiometer, 16 mm |\n\n\\* Use two of them, not four.\n",
    );
    expect(lines(either)).toEqual(["R9 R7", "R8 R6"]);
    expect(findings(either)).toEqual([]);
    expect(findings(list)).toEqual([]);
  });
});

describe("Counts and do-not-fit marks are read in spite of trap", () => {
  test("10: a count that is no number, and a count that is missing", () => {
    const list = readList("Ref,Qty,Value\nR1,1,1k\nR2,-,2k\nR3,,3k\nR4,n/a,4k\nR5,a few,5k\n");
    expect(list.lines.map((line) => line.quantity)).toEqual([
      1,
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
    expect(findings(list)).toEqual(["count-mismatch 6: a few"]);
  });

  test("11: count 0, and do-not-fit lines that count 1", () => {
    const list = readList(
      'Ref,Qty,Value,DNP\nR1,0,10k,\nR2,1,DNF,DNP\nR3,1,DNI,\n"R4, R5",2,not fitted,\nR6,1,4k7 DNP,\nR7,1,1k,\n',
    );
    expect(list.lines.filter((line) => !line.fitted).map(names)).toEqual([
      "R1",
      "R2",
      "R3",
      "R4 R5",
      "R6",
    ]);
    expect(findings(list)).toEqual([]);
  });

  test("12: a do-not-fit column that is empty, and a starred word for a value", () => {
    const list = readList("Ref,Value,DNP\nR1,1k,\nC1,*XYZ*,\nC2,10n,\n");
    expect(list.lines.filter((line) => !line.fitted).map(names)).toEqual(["C1"]);
    expect(columns(list)).toMatchObject({ fitted: "DNP" });
  });
});

test("a count of packages is right where a line names their sections", () => {
  const list = readList(
    'Ref,Qty,Value\n"U3A, U3B",1,LM358\n"U4A, U4B, U5",2,LM358\n"U6A, U6B",3,LM358\n',
  );
  expect(findings(list)).toEqual(["count-mismatch 4: 3"]);
});

describe("Rows and values are read in spite of trap", () => {
  test("19: a row that lost its first cell, and a short row", () => {
    const list = readList(
      "Item,Ref,Qty,Value\n1,R1,1,10k\n2,R2,1,22k\nR3,1,47k\n4,R4,1,68k\n5,R5\n",
    );
    expect(lines(list)).toEqual(["R1", "R2", "R3", "R4", "R5"]);
    expect(lineOf(list, "R3")).toMatchObject({ quantity: 1, value: { amount: 47e3, unit: "Ω" } });
    expect(findings(list)).toEqual(["designator-syntax 4: R3,1,47k"]);
    const short = readMarkdown(
      "| Ref | Qty | Value | Source |\n|--|--|--|--|\n| R1 | 1 | 10k | shop |\n| | 4 | Knob\n| R2 | 1 | 22k |\n",
    );
    expect(lines(short)).toEqual(["R1", "(Knob)", "R2"]);
  });

  test("22: no value column, a value in the description only, an empty value", () => {
    const none = readList("J2:1\nU1:1\nC2:1\nR7:1\n");
    expect(lines(none)).toEqual(["J2", "U1", "C2", "R7"]);
    expect(none.lines.every((line) => line.value === undefined && line.quantity === 1)).toBe(true);
    const described = readList(
      "Ref,Qty,Description\nR1,1,Film resistor 10k ohms\nC1,1,MLCC 25V 0.1uF\nU1,1,Timer\n",
    );
    expect(lineOf(described, "R1").value).toEqual({ amount: 10e3, unit: "Ω" });
    expect(lineOf(described, "C1")).toMatchObject({
      value: { amount: 100e-9, unit: "F" },
      voltage: { amount: 25, unit: "V" },
    });
    const empty = readList("Ref,Value,Name\nR1,10k,RES\nD1,,LED red\n");
    expect(lineOf(empty, "D1").value).toBeUndefined();
    expect(lineOf(empty, "D1").cells.value?.text).toBe("");
  });

  test("23: 603 for 0603, and a decimal comma in a package's name", () => {
    const list = readList('Ref,Value,Package\nR1,10k,603\nR2,22k,603\nX1,4 MHz,"2,15/1,0"\n');
    expect(columns(list)).toMatchObject({ package: "Package" });
    expect(lineOf(list, "X1").cells.package?.text).toBe("2,15/1,0");
    const height = (name: string) => bodyHeight({ letters: "R", package: name })?.mm;
    expect(height("603")).toBe(height("0603"));
  });

  test("24: inch marks, no-break spaces, no final line end, 8-bit letters", () => {
    const inch = readList(
      'Ref,Qty,Description\nW1,1,wire 3" red\nW2,1,"tube 4" long, black"\nR1,1,10k',
    );
    expect(inch.lines.map((line) => line.cells.description?.text)).toEqual([
      'wire 3" red',
      'tube 4" long, black',
      "10k",
    ]);
    expect(findings(inch)).toEqual([]);
    const space = readList("Ref,Value\nL1,56\u00a0uH\nL2,\u00a010 uH\u00a0");
    expect(space.lines.map((line) => line.value?.amount)).toEqual([56e-6, 10e-6]);
    const bytes = Uint8Array.from("St\xfcck;Teil;Wert\n1;C1;10 \xb5F\n1;C2;22 \xb5F\n", (char) =>
      char.charCodeAt(0),
    );
    const eight = readList(bytes);
    expect(eight.encoding).toBe("windows-1252");
    expect(columns(eight)).toMatchObject({ quantity: "Stück" });
    expect(eight.lines.map((line) => line.value?.amount)).toEqual([10e-6, 22e-6]);
  });

  test("25: line breaks, code, entities and pictures in the cells of a Markdown table", () => {
    const text =
      "\uFEFF# Kit\n\n| Ref | Value | Notes |\n|---|---|---|\n" +
      "| R1<br>R2, `R3` | 1k | ![photo](a.png) |\n| `C1`, C2 | `4\\|7` | x<!-- no -->y |\n| D1&nbsp;D2 | ~~1N~~ 4148 | |\n";
    const list = readMarkdown(text);
    expect(lines(list)).toEqual(["R1 R2 R3", "C1 C2", "D1 D2"]);
    expect(list.lines.map(({ cells }) => [cells.value?.text, cells.notes?.text])).toEqual([
      ["1k", "photo"],
      ["4|7", "xy"],
      ["1N 4148", ""],
    ]);
    const places = list.lines.flatMap(({ designators }) => designators.map(({ span }) => span));
    expect(places.map(({ start, end }) => list.text.slice(start, end)).join(" ")).toBe(
      "R1 R2 R3 C1 C2 D1 D2",
    );
  });
});
