/**
 * Findings in workbooks: no editor shows a place in one, so they stand where the guide names the list,
 * and tell sheet and cell.
 */
import type { Anchor, Finding, Related } from "../checks/check.ts";
import { placeOf, Verdict } from "../checks/verdict.ts";
import { tell } from "../model/list/tellSheet.ts";
import type { SheetPlaces } from "../syntax/sheets/sheetText.ts";
import type { Span } from "../text/span.ts";

/** A sheet and where the guide names it. */
export interface NamedSheet {
  readonly places: SheetPlaces;
  readonly span: Span;
}

/** Moves findings into one guide. `sheets`: by the lists' URIs. */
export class SheetFindings {
  readonly #guideUri: string;
  readonly #sheets: ReadonlyMap<string, NamedSheet>;
  /** Kept, because what is shown of a finding is kept by the finding. */
  readonly #moved = new WeakMap<Finding, Finding>();

  constructor(guideUri: string, sheets: ReadonlyMap<string, NamedSheet>) {
    this.#guideUri = guideUri;
    this.#sheets = sheets;
  }

  show(verdicts: readonly Verdict[]): readonly Verdict[] {
    if (this.#sheets.size === 0) return verdicts;
    return verdicts.map((verdict) => {
      const { check, finding, severity } = verdict;
      const moved = this.#shown(finding);
      return moved === finding ? verdict : new Verdict(check, moved, severity);
    });
  }

  #shown(finding: Finding): Finding {
    const known = this.#moved.get(finding);
    if (known) return known;
    const related = finding.related ?? [];
    const isHere = [finding, ...related].every(({ at }) => !this.#sheetOf(at));
    const moved: Finding = isHere
      ? finding
      : { ...this.#move(finding), related: related.map((one) => this.#move(one)) };
    this.#moved.set(finding, moved);
    return moved;
  }

  #move<Told extends Related>(told: Told): Told {
    const sheet = this.#sheetOf(told.at);
    if (!sheet) return told;
    const { span } = placeOf(told.at);
    const at = { uri: this.#guideUri, span: sheet.span };
    return { ...told, at, message: () => tell(sheet.places, span, told.message()) };
  }

  #sheetOf(at: Anchor): NamedSheet | undefined {
    return "uri" in at ? this.#sheets.get(at.uri) : undefined;
  }
}
