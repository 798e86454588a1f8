/** A sheet for the desk: an HTML file without scripts that prints well on A4 and Letter. */
import type { GuideState } from "../../model/guideState.ts";
import { documentHead } from "../documentHead.ts";
import { escapeHtml } from "../html.ts";

/** Black on white, in what every machine has. */
const STYLE = `:root { color-scheme: light; }
* { box-sizing: border-box; }
body { margin: 0; background: #fff; color: #1b1d1f; font: 1rem/1.4 system-ui, "DejaVu Sans", sans-serif; overflow-wrap: break-word; }
main { max-width: 56rem; margin: 0 auto; padding: 1.5rem 1rem 3rem; }
h1 { font-size: 1.6rem; line-height: 1.2; margin: 0 0 .2rem; }
h2 { font-size: 1.15rem; margin: 1.8rem 0 .4rem; break-after: avoid; }
p { margin: .3rem 0; }
.sub { color: #4b5054; }
.forced { border: 2px solid #a4261d; color: #a4261d; padding: .5rem .7rem; font-weight: 600; }
.blanks { display: flex; flex-wrap: wrap; gap: .4rem 1.5rem; margin: 1rem 0; }
.blanks p { flex: 1 1 12rem; display: flex; gap: .5rem; align-items: flex-end; margin: 0; }
.blanks .blank { flex: 1; border-bottom: 1px solid #1b1d1f; min-height: 1.6rem; }
.wide { display: block; border-bottom: 1px solid #1b1d1f; height: 1.9rem; }
.scroll { overflow-x: auto; }
table { width: 100%; border-collapse: collapse; table-layout: fixed; min-width: 34rem; }
th, td { text-align: left; vertical-align: top; padding: .28rem .5rem; border-bottom: 1px solid #c9c6bf; }
thead th, thead td { border-bottom: 2px solid #1b1d1f; font-size: .85rem; }
tfoot td, tfoot th { border-bottom: 0; border-top: 2px solid #1b1d1f; font-weight: 600; }
tr { break-inside: avoid; }
thead { display: table-header-group; }
tfoot { display: table-row-group; }
.right { text-align: right; white-space: nowrap; width: 5rem; }
.box { width: 2.2rem; }
.box input { width: 1.1rem; height: 1.1rem; margin: .1rem 0; accent-color: #1b1d1f; }
.what { width: 44%; }
.ref { font-family: ui-monospace, "DejaVu Sans Mono", monospace; font-size: .92em; }
.soft { color: #4b5054; }
.number { width: 4.5rem; }
.limits { width: 30%; }
.entry { width: 24%; text-align: right; }
.unit { color: #4b5054; }
.tickbox { width: 5.5rem; }
.tickbox input { width: 1.1rem; height: 1.1rem; margin: .1rem 0; accent-color: #1b1d1f; }
@page { margin: 14mm; @bottom-right { content: counter(page) " / " counter(pages); font: 9pt sans-serif; } }
@media print { body { font-size: 9.5pt; } main { max-width: none; padding: 0; } .scroll { overflow: visible; } table { min-width: 0; } h2 { margin-top: 1rem; } th, td { padding: .12rem .4rem; } }
`;

const POLICY = "default-src 'none'; style-src 'unsafe-inline'";

/** `body` is HTML. Nothing is fetched and nothing runs. */
export function sheetDocument(guide: GuideState, title: string, body: string): string {
  const tag = guide.frontMatter.language?.value ?? guide.language ?? "en";
  return `${documentHead({ language: tag, title, policy: POLICY, style: STYLE })}
<body>
<main>
${body}
</main>
</body>
</html>
`;
}

/** Lines to write on, each behind its label. */
export function blanks(labels: readonly string[]): string {
  const lines = labels.map(
    (label) => `<p><span>${escapeHtml(label)}</span><span class="blank"></span></p>`,
  );
  return `<div class="blanks">${lines.join("")}</div>`;
}

export interface SheetColumn {
  readonly title: string;
  readonly class?: string;
}

/** `rows` hold HTML by column; `foot` is the cells of a last line, by column and span. */
export function sheetTable(
  columns: readonly SheetColumn[],
  rows: readonly (readonly string[])[],
  foot: string,
): string {
  const attribute = ({ class: name }: SheetColumn) => (name ? ` class="${name}"` : "");
  const head = columns.map((one) =>
    one.title === ""
      ? `<td${attribute(one)}></td>`
      : `<th scope="col"${attribute(one)}>${escapeHtml(one.title)}</th>`,
  );
  const body = rows.map(
    (cells) =>
      `<tr>${cells.map((cell, index) => `<td${attribute(columns[index]!)}>${cell}</td>`).join("")}</tr>`,
  );
  const last = foot ? `\n<tfoot>${foot}</tfoot>` : "";
  return `<div class="scroll" tabindex="0"><table>\n<thead><tr>${head.join("")}</tr></thead>\n<tbody>\n${body.join("\n")}\n</tbody>${last}\n</table></div>`;
}
