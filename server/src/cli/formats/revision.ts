/**
 * What a revised parts list touches in a guide: for the author as text or JSON, and in Markdown as a
 * change note for builders who have the old kit, which leaves out what only the author must see to.
 */
import {
  type PackingChange,
  TOUCHED_KINDS,
  type Touched,
  type TouchedKind,
} from "../../features/revision/touched.ts";
import { placeOf } from "../checking.ts";
import type { RevisedInput } from "../reviseGuide.ts";
import { printable, type Terminal } from "../terminal.ts";
import {
  changesJson,
  changesText,
  escapeMarkdown,
  type Names,
  sectionText,
  TO_BUILDERS,
  titleOf,
} from "./changes.ts";

export function formatRevision(
  revised: RevisedInput,
  names: Names,
  format: "text" | "json" | "markdown",
  cwd: string,
  terminal: Pick<Terminal, "paint">,
): string {
  if (format === "json") return asJson(revised, names, cwd);
  return format === "markdown" ? asNote(revised, names) : asText(revised, names, cwd, terminal);
}

function asText(
  { changes, touched, packing, fileOf }: RevisedInput,
  names: Names,
  cwd: string,
  { paint }: Pick<Terminal, "paint">,
): string {
  const parts = [titleOf(names, false), changesText({ ...changes, hardware: [] }, false)];
  for (const [kind, own] of byKind(touched)) {
    parts.push(`\n${paint("bold", TOUCHED_KINDS[kind])}\n`);
    for (const one of own) {
      const { file, line, column } = placeIn(one, fileOf, cwd);
      const step = one.step ? ` step ${one.step.number}:` : "";
      const place = `${printable(file)}:${line}:${column}`;
      parts.push(`  ${paint("bold", place)}${step} ${printable(one.message)}\n`);
      for (const title of fixTitles(one))
        parts.push(`    ${paint("dim", "fix:")} ${printable(title)}\n`);
    }
  }
  if (packing.length > 0) {
    parts.push(sectionText({ heading: "Packing", entries: packing.map(packingText) }, false));
  }
  if (touched.length === 0) parts.push("\nNothing in the guide is touched.\n");
  return parts.join("");
}

function asNote(revised: RevisedInput, names: Names): string {
  const { changes, touched, packing, guide, nameOf } = revised;
  const title = guide.frontMatter.title?.value ?? "";
  const parts = [
    `# Change note${title && `: ${escapeMarkdown(title)}`}\n\n`,
    titleOf(names, true),
    "\nIf you have the kit as it was before, this is what differs. All else is as it was.\n",
    changesText({ ...changes, hardware: [] }, true, { ...TO_BUILDERS, nameOf }),
  ];
  const building = touched.filter(({ note }) => note !== undefined);
  for (const [kind, own] of byKind(building)) {
    parts.push(`\n## ${NOTE_HEADINGS[kind] ?? TOUCHED_KINDS[kind]}\n`);
    let stage: number | undefined;
    for (const { step, note = "" } of own) {
      if (step?.stage && step.stageNumber !== stage) {
        parts.push(`\n### ${step.stageNumber} ${escapeMarkdown(step.stage)}\n`);
      }
      if (step?.stageNumber !== stage || stage === undefined) parts.push("\n");
      stage = step?.stageNumber;
      parts.push(`- ${step ? `Step ${step.number}: ` : ""}${escapeMarkdown(note)}\n`);
    }
  }
  if (packing.length > 0) {
    const heading = "What is in the kit";
    const entries = packing.map((one) => packingText({ ...one, name: one.look }));
    parts.push(sectionText({ heading, entries }, true));
  }
  return parts.join("");
}

/** For builders, who reword nothing. */
const NOTE_HEADINGS: Readonly<Partial<Record<TouchedKind, string>>> = {
  step: "Steps that differ",
  table: "Rows of tables that differ",
  figure: "Figures that differ",
};

function packingText({
  name,
  before,
  after,
}: Pick<PackingChange, "name" | "before" | "after">): string {
  if (before === undefined) return `${name}: new, ${after}`;
  return after === undefined ? `${name}: gone, was ${before}` : `${name}: ${before} → ${after}`;
}

/** Field names and their order are a contract with those who read it. */
function asJson({ changes, touched, packing, fileOf }: RevisedInput, names: Names, cwd: string) {
  const json = {
    ...changesJson(changes, names),
    touched: touched.map((one) => ({
      kind: one.kind,
      step: one.step?.number ?? null,
      message: one.message,
      ...placeIn(one, fileOf, cwd),
      forBuilder: one.note !== undefined,
      note: one.note ?? null,
      findings: one.findings.map(({ code, message }) => ({ code, message })),
      fixes: fixTitles(one),
    })),
    packing: packing.map(({ name, before, after }) => ({ name, before, after })),
  };
  return `${JSON.stringify(json, undefined, 2)}\n`;
}

function byKind(touched: readonly Touched[]): ReadonlyMap<TouchedKind, readonly Touched[]> {
  const kinds = new Map<TouchedKind, Touched[]>();
  for (const one of touched) {
    const own = kinds.get(one.kind);
    if (own) own.push(one);
    else kinds.set(one.kind, [one]);
  }
  return kinds;
}

/** The same may be done at several places of a step. */
function fixTitles({ fixes }: Touched): string[] {
  return [...new Set(fixes().map(({ title }) => title))];
}

function placeIn({ uri, span }: Touched, fileOf: RevisedInput["fileOf"], cwd: string) {
  const { uri: shown, lines } = fileOf(uri);
  const start = lines?.positionAt(span.start) ?? { line: 0, column: 0 };
  const end = lines?.positionAt(span.end) ?? start;
  return placeOf({ uri: shown, span, start, end }, cwd);
}
