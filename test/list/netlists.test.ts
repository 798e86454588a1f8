/** Parts lists in XML netlists, of an invented kit. */
import { describe, expect, test } from "vitest";
import { loadPartsList } from "../../server/src/model/list/load.ts";
import { cellsOf } from "../../server/src/model/list/partsList.ts";
import { Service } from "../../server/src/service.ts";
import { MemoryFiles } from "../memoryFiles.ts";
import { columns, findings, lineOf, lines, utf16 } from "./reading.ts";

const COMPONENTS = `
    <comp ref="R1">
      <value>4k7</value>
      <footprint>Wren:R_Axial_DIN0207_L6.3mm_D2.5mm</footprint>
      <description>film &amp; 1 %</description>
      <fields>
        <field name="MPN">MR 25-4K7</field>
        <field name="Height">2.5 mm</field>
      </fields>
      <libsource lib="Device" part="R" description="Resistor"/>
      <property name="Sheetname" value="Root"/>
    </comp>
    <comp ref='C1'><value>100n</value><fields><field name="mpn"/></fields>
      <property name="dnp"/><libsource lib="Device" part="C" description="Capacitor"/></comp>
    <comp ref="H1"><value>M3</value><property name="exclude_from_bom"/></comp>
    <comp ref="Q1"><value><![CDATA[BC547]]></value></comp>`;
const NETS = `<nets><net code="1" name="GND"><node ref="R1" pin="1"/><node ref="C1" pin="2"/></net></nets>`;
const NETLIST = `<?xml version="1.0" encoding="UTF-8"?>
<export version="E">
  <design><source>wren.sch</source></design>
  <components>${COMPONENTS}
  </components>
  <libparts><libpart lib="Device" part="R"><fields><field name="Reference">R</field></fields></libpart></libparts>
  ${NETS}
</export>
`;

const load = (source: string | Uint8Array) => loadPartsList("file:///kit/wren.xml", source);
const bytes = (text: string) => new TextEncoder().encode(text);

describe("an XML netlist", () => {
  test("gives a line for each component; nets and library symbols are none", async () => {
    const list = await load(bytes(NETLIST));
    expect(list.format).toBe("netlist");
    expect(lines(list)).toEqual(["R1", "C1", "H1", "Q1"]);
    expect(list.lines.map(({ row }) => row)).toEqual([5, 16, 18, 19]);
    expect(columns(list)).toMatchObject({
      designator: "ref",
      value: "value",
      package: "footprint",
      "part number": "MPN",
      height: "Height",
      fitted: "DNP",
    });
    expect(findings(list)).toEqual([]);
  });

  test("tells values, fields and what is not fitted", async () => {
    const list = await load(NETLIST);
    expect(lineOf(list, "R1")).toMatchObject({
      value: { amount: 4700, unit: "Ω" },
      height: 2.5,
      fitted: true,
    });
    expect(lineOf(list, "R1").cells.description?.text).toBe("film & 1 %");
    expect(lineOf(list, "C1").cells.description?.text).toBe("Capacitor");
    expect(list.lines.map(({ fitted }) => fitted)).toEqual([true, false, false, true]);
    expect(lineOf(list, "Q1").cells.value?.text).toBe("BC547");
  });

  test.each([
    ["with LF", NETLIST],
    ["with CRLF", NETLIST.replaceAll("\n", "\r\n")],
    ["with letters beyond the first plane", NETLIST.replace("wren.sch", "wren 🐦.sch")],
  ])("has its values at their places, %s", async (_, source) => {
    const list = await load(source);
    for (const line of list.lines) {
      const { designators } = line;
      for (const { text, span } of cellsOf(line)) {
        const raw = source.slice(span.start, span.end);
        if (text !== "" && text !== "DNP") {
          expect(raw.replace("&amp;", "&").replace(/^<!\[CDATA\[|\]\]>$/g, "")).toBe(text);
        }
      }
      for (const { name, span } of designators) {
        expect(source.slice(span.start, span.end)).toBe(name);
      }
    }
  });

  test("may be in UTF-16, or be called anything", async () => {
    const list = await loadPartsList(
      "file:///kit/parts.csv",
      utf16(NETLIST.replace("UTF-8", "UTF-16")),
    );
    expect(lines(list)).toEqual(["R1", "C1", "H1", "Q1"]);
  });
});

describe("XML that is no list", () => {
  const message = async (text: string) => (await load(text)).problems.map((one) => one.message);

  test.each([
    ["<?xml version='1.0'?><parts><part>R1</part></parts>", "is no netlist"],
    ["<export><components/></export>", "is no netlist"],
    [
      `<!DOCTYPE e [<!ENTITY a "ha"><!ENTITY b "&a;&a;">]><export>${COMPONENTS}</export>`,
      "declares entities",
    ],
    [
      `<export><components><comp ref="R1"><value>&lol;</value></comp></components></export>`,
      "not well-formed",
    ],
    [`<a>${"<b>".repeat(100_000)}`, "not well-formed"],
    [`<a ${Array.from({ length: 10_000 }, (_, i) => `a${i}=""`).join(" ")}/>`, "not well-formed"],
  ])("gives one finding: %#", async (text, says) => {
    expect(await message(text)).toEqual([expect.stringContaining(says)]);
  });

  test("gives one finding wherever it is cut off, at the end of what is there", async () => {
    for (let length = 30; length < NETLIST.length - 2; length += 37) {
      const list = await load(NETLIST.slice(0, length));
      expect(list.format).toBe("unreadable");
      expect(list.problems).toHaveLength(1);
      expect(list.problems[0]!.span.end).toBeLessThanOrEqual(length);
    }
    const cut = await load(NETLIST.slice(0, NETLIST.indexOf("M3</value>")));
    expect(cut.problems[0]!.span.end).toBe(cut.text.length);
  });

  test("of 201,000 components is read soon, as far as the limit", async () => {
    const many = Array.from({ length: 201_000 }, (_, i) => `<comp ref="R${i}"/>`).join("");
    const start = process.cpuUsage().user;
    const list = await load(`<export><components>${many}</components></export>`);
    expect((process.cpuUsage().user - start) / 1000).toBeLessThan(10_000);
    expect(list.lines).toHaveLength(200_000);
    expect(list.problems[0]!.message).toContain("The netlist goes on");
  });
});

test("a guide whose list is a netlist has its findings in it, and cannot rename in it", async () => {
  const files = new MemoryFiles();
  files.set("file:///kit/wren.xml", bytes(NETLIST));
  const guide = "---\nparts: wren.xml\n---\n\n## Board\n\n1. Fit [R1 = 5k6].\n2. Fit [R2].\n";
  files.set("file:///kit/guide.md", guide);
  const service = new Service(files);
  service.follow("file:///kit/guide.md");
  await service.settle();
  const found = service.takeChanges();
  const inList = found.find(({ uri }) => uri.endsWith("wren.xml"))!.diagnoses;
  expect(
    inList.map(({ code, start, end }) => `${code} ${start.line + 1}:${start.column}-${end.column}`),
  ).toEqual(["missing-part 19:15-17"]);
  const inGuide = found
    .find(({ uri }) => uri.endsWith("guide.md"))!
    .diagnoses.map(({ code }) => code);
  expect(inGuide).toEqual(expect.arrayContaining(["stated-value", "unknown-part"]));
  const state = service.guidesOf("file:///kit/guide.md")[0]!;
  expect(state.lists[0]!.format).toBe("netlist");
});
