/** The packing list as a sheet to tick off. */
import { markItems } from "../../checks/words.ts";
import type { GuideState } from "../../model/guideState.ts";
import type { Part } from "../../model/parts.ts";
import { inventory } from "../../model/tools/inventory.ts";
import { escapeHtml } from "../html.ts";
import { blanks, type SheetColumn, sheetDocument, sheetTable } from "../paper/document.ts";
import { titleOf } from "../title.ts";
import type { PageWords } from "../words/form.ts";
import { filled, pageWords } from "../words/words.ts";
import type { Material } from "./making.ts";
import type { PackedLine } from "./packedLines.ts";
import { type PackGroup, type PackingList, type PackRow, totalOf } from "./packingList.ts";
import {
  amountText,
  groupTitle,
  materialText,
  notesOf,
  partNames,
  rowNames,
  totalText,
  whatText,
} from "./packingRows.ts";

/** `faults`: how many of its amounts disagree with the parts list. */
export function packingHtml(packing: PackingList, guide: GuideState, faults: number): string {
  return new PackingSheet(packing, guide).write(faults);
}

class PackingSheet {
  readonly #packing: PackingList;
  readonly #guide: GuideState;
  readonly #words: PageWords;
  readonly #hasSpares: boolean;

  constructor(packing: PackingList, guide: GuideState) {
    this.#packing = packing;
    this.#guide = guide;
    this.#words = pageWords(guide.language);
    this.#hasSpares = packing.lines.some(({ spare }) => spare > 0);
  }

  write(faults: number): string {
    const { packing: said, record } = this.#words;
    const { groups } = this.#packing;
    const kit = titleOf(this.#guide);
    const total = totalText(totalOf(groups.flatMap(({ rows }) => rows)), this.#words);
    const parts = [
      `<h1>${escapeHtml(kit ? `${kit}: ${said.title}` : said.title)}</h1>`,
      `<p class="sub">${escapeHtml(total)}</p>`,
      faults > 0 ? `<p class="forced">${escapeHtml(said.faulty)}</p>` : "",
      blanks([said.kitNumber, record.date, said.packedBy, said.checkedBy]),
      ...groups.map((group) => this.#group(group)),
      `<h2>${escapeHtml(said.wholeKit)}</h2>\n<p class="total"><strong>${escapeHtml(said.total)}:</strong> ${escapeHtml(total)}</p>`,
      this.#made(),
      this.#notInKit(),
    ];
    const title = kit ? `${said.title}: ${kit}` : said.title;
    return sheetDocument(this.#guide, title, parts.filter((part) => part !== "").join("\n"));
  }

  #group(group: PackGroup): string {
    const { packing: said, table } = this.#words;
    const columns: SheetColumn[] = [
      { title: "", class: "box" },
      { title: said.quantity, class: "right" },
      { title: said.what, class: "what" },
      { title: table.parts },
    ];
    if (this.#hasSpares) columns.push({ title: said.spare, class: "right" });
    const title = escapeHtml(groupTitle(group, this.#packing, this.#words));
    const rows = group.rows.map((row) => this.#row(row));
    const total = escapeHtml(totalText(totalOf(group.rows), this.#words));
    const foot = `<tr><th scope="row" colspan="2">${escapeHtml(said.total)}</th><td colspan="${columns.length - 2}">${total}</td></tr>`;
    return `<h2>${title}</h2>\n${sheetTable(columns, rows, foot)}`;
  }

  #row(row: PackRow): string[] {
    const { name, more } = whatText(row.packed, this.#guide.language);
    const names = rowNames(row, this.#guide);
    const label = filled(this.#words.packing.packed, [name, ...names].join(", "));
    const notes = notesOf(row, this.#packing, this.#guide, this.#words);
    const cells = [
      `<input type="checkbox" aria-label="${escapeHtml(label)}">`,
      escapeHtml(amountText(row, this.#guide.language)),
      this.#what(name, [more, ...notes]),
      refs(names),
    ];
    if (this.#hasSpares) cells.push(row.spare > 0 ? String(row.spare) : "");
    return cells;
  }

  #what(name: string, more: readonly string[]): string {
    const told = more.filter((text) => text !== "").map(escapeHtml);
    const rest = told.length > 0 ? ` <span class="soft">${told.join(" · ")}</span>` : "";
    return `<strong>${escapeHtml(name)}</strong>${rest}`;
  }

  /** Parts that the builder makes, with what they are made from. */
  #made(): string {
    const { packing: said, table } = this.#words;
    const { making } = this.#packing;
    if (making.size === 0) return "";
    const madeTogether = new Map<readonly Material[], Part[]>();
    for (const [part, materials] of making) {
      madeTogether.set(materials, [...(madeTogether.get(materials) ?? []), part]);
    }
    const rows = [...madeTogether].map(([materials, parts]) => {
      const used = materials.map((one) => materialText(one, this.#guide.language));
      const from = [...this.#coresOf(parts), ...used].filter((text) => text !== "");
      return [refs(partNames(parts, this.#guide)), escapeHtml(from.join(" + "))];
    });
    const columns = [{ title: table.parts }, { title: said.madeFrom, class: "what" }];
    return `<h2>${escapeHtml(said.made)}</h2>\n${sheetTable(columns, rows, "")}`;
  }

  /** What of the parts themselves lies in the box, each kind once. */
  #coresOf(parts: readonly Part[]): readonly string[] {
    const cored = parts.filter(
      (part) => !this.#packing.made.some(({ lines }) => lines.includes(part.line)),
    );
    return [...new Set(cored.map(coreOf))];
  }

  #notInKit(): string {
    const { packing: said, ownSupplies } = this.#words;
    const unfitted = this.#packing.unfitted.map((packed) => {
      const { name } = whatText(packed, this.#guide.language);
      return `<li>${refs(this.#namesOf(packed))} ${escapeHtml(name)}: ${escapeHtml(said.unfitted)}</li>`;
    });
    const own = inventory(this.#guide)
      .filter(({ kind }) => kind !== "tool")
      .map(({ name }) => `<li>${escapeHtml(name)}</li>`);
    const items = [...unfitted, ...own];
    if (items.length === 0) return "";
    return `<h2>${escapeHtml(ownSupplies)}</h2>\n<ul>\n${items.join("\n")}\n</ul>`;
  }

  #namesOf({ parts, lines }: PackedLine): readonly string[] {
    if (parts.length > 0) return partNames(parts, this.#guide);
    return markItems(lines.flatMap(({ designators }) => designators));
  }
}

/** The part's own line: the core that it is wound on. */
function coreOf({ line }: { line: PackedLine["line"] }): string {
  return line.cells.description?.text ?? line.cells.value?.text ?? "";
}

function refs(names: readonly string[]): string {
  return names.map((name) => `<span class="ref">${escapeHtml(name)}</span>`).join(", ");
}
