// How long a long parts list takes to be read, by the kind of its file: the first time, when nothing is
// warm and what reads workbooks is yet to be compiled, and then.
import { performance } from "node:perf_hooks";
import { strToU8, zipSync } from "fflate";
import { ROOT } from "./run.mjs";

const LINES = 10_000;
const RUNS = 5;

/** Ten columns, as lists of layout programs have them. */
const HEADER = ["Item", "Designator", "Qty", "Value", "Footprint", "Height", "Tolerance", "MPN"];

function cellsOf(line) {
  const first = 3 * line + 1;
  const package_ = "R_Axial_DIN0207_L6.3mm_D2.5mm";
  return [
    line + 1,
    `R${first}–R${first + 2}`,
    3,
    `${line % 900}k`,
    package_,
    2.5,
    "1 %",
    `MR-${line}`,
  ];
}

const ROWS = [HEADER, ...Array.from({ length: LINES }, (_, line) => cellsOf(line))];

function csv() {
  return strToU8(ROWS.map((cells) => cells.join(",")).join("\n"));
}

/** A workbook with shared texts, as spreadsheet programs write it. */
function xlsx() {
  const texts = new Map();
  const cell = (content, row, column) => {
    const at = `r="${String.fromCharCode(65 + column)}${row + 1}"`;
    if (typeof content === "number") return `<c ${at}><v>${content}</v></c>`;
    if (!texts.has(content)) texts.set(content, texts.size);
    return `<c ${at} t="s"><v>${texts.get(content)}</v></c>`;
  };
  const rows = ROWS.map(
    (cells, row) =>
      `<row r="${row + 1}">${cells.map((one, column) => cell(one, row, column)).join("")}</row>`,
  );
  const shared = [...texts.keys()].map((text) => `<si><t>${text}</t></si>`).join("");
  const relation = (id, type, target) =>
    `<Relationship Id="${id}" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/${type}" Target="${target}"/>`;
  const relations = (...all) => `<Relationships>${all.join("")}</Relationships>`;
  const parts = {
    "[Content_Types].xml": "<Types/>",
    "_rels/.rels": relations(relation("a", "officeDocument", "xl/workbook.xml")),
    "xl/workbook.xml": `<workbook xmlns:r="r"><sheets><sheet name="Kit" sheetId="1" r:id="b"/></sheets></workbook>`,
    "xl/_rels/workbook.xml.rels": relations(
      relation("b", "worksheet", "worksheets/sheet1.xml"),
      relation("c", "sharedStrings", "sharedStrings.xml"),
    ),
    "xl/worksheets/sheet1.xml": `<worksheet><sheetData>${rows.join("")}</sheetData></worksheet>`,
    "xl/sharedStrings.xml": `<sst>${shared}</sst>`,
  };
  return zipSync(
    Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])),
  );
}

/** The components alone; nets would be passed over. */
function netlist() {
  const components = Array.from(
    { length: 3 * LINES },
    (_, i) =>
      `<comp ref="R${i + 1}"><value>4k7</value><footprint>R_Axial_DIN0207</footprint><fields><field name="MPN">MR-${i}</field></fields></comp>`,
  );
  return strToU8(`<export><components>${components.join("\n")}</components></export>`);
}

/** One row for each kind of file. */
export async function measureLists() {
  const files = { "parts.csv": csv(), "parts.xlsx": xlsx(), "netlist.xml": netlist() };
  const results = [];
  for (const [name, bytes] of Object.entries(files)) {
    // A module of its own for each, so that none runs what another has warmed.
    const { loadPartsList } = await freshReader(name);
    const times = [];
    let lines = 0;
    for (let i = 0; i < RUNS; i++) {
      const [start, used] = [performance.now(), process.cpuUsage()];
      const list = await loadPartsList(`file:///bench/${name}`, bytes);
      const { user, system } = process.cpuUsage(used);
      times.push({ ms: performance.now() - start, cpu: (user + system) / 1000 });
      lines = list.lines.length;
    }
    const [first, ...rest] = times;
    rest.sort((a, b) => a.ms - b.ms);
    const then = rest[Math.floor(rest.length / 2)];
    results.push({
      list: name,
      lines,
      kB: Math.round(bytes.length / 1000),
      "first ms": first.ms.toFixed(0),
      "first CPU ms": first.cpu.toFixed(0),
      "then p50 ms": then.ms.toFixed(0),
      "then CPU ms": then.cpu.toFixed(0),
    });
  }
  return results;
}

async function freshReader(name) {
  const { default: esbuild } = await import("esbuild");
  const { outputFiles } = await esbuild.build({
    entryPoints: ["server/src/model/list/load.ts"],
    absWorkingDir: ROOT,
    bundle: true,
    write: false,
    format: "esm",
    platform: "node",
    footer: { js: `// ${name}` },
  });
  const code = Buffer.from(outputFiles[0].contents).toString("base64");
  return import(`data:text/javascript;base64,${code}`);
}
