/** The fixes of findings: of those at the selection, of all of one check, of all that are safe. */
import type { WorkspaceEdit } from "vscode-languageserver";
import type { Fix } from "../../checks/check.ts";
import { FixSet } from "../../checks/fixSet.ts";
import type { Diagnosis, Service } from "../../service.ts";
import { toDiagnostic, toWorkspaceEdit } from "../convert.ts";
import type { Offer, Offered, Requested } from "./offer.ts";

export const fixes: Offer = function* (requested): Iterable<Offered> {
  const { context } = requested;
  const { service } = context;
  for (const diagnosis of findingsAt(requested)) {
    const offered = diagnosis.fixes();
    for (const fix of offered) {
      const edit = toWorkspaceEdit(fix, service);
      if (!edit) continue;
      yield {
        title: fix.title,
        diagnostics: [toDiagnostic(diagnosis, context.explain)],
        isPreferred: fix.safe && offered.length === 1,
        edit,
      };
    }
  }
};

/** For each check with a finding at the selection: all findings of it that have one fix. */
export const fixesOfCheck: Offer = function* (requested): Iterable<Offered> {
  const { uri, context } = requested;
  for (const code of new Set(findingsAt(requested).map((one) => one.code))) {
    const all = () => context.service.diagnoses(uri).filter((one) => one.code === code);
    if (all().length < 2 || !findingsAt(requested).some((one) => isOf(one, code))) continue;
    yield {
      title: `Fix all findings of ${code} in this file`,
      edit: async () => together(all().map(onlyFix), context.service),
    };
  }
};

/** What `kitquill check --fix` would do to this file's findings in one round. */
export const safeFixes: Offer = function* ({ uri, context }): Iterable<Offered> {
  const safe = context.service.diagnoses(uri).map((one) => one.fixes().find((fix) => fix.safe));
  const edit = together(safe, context.service);
  if (edit) yield { title: "Make all safe fixes in this file", edit };
};

export function findingsAt({ context, uri, span }: Requested): readonly Diagnosis[] {
  return context.service
    .diagnoses(uri)
    .filter((one) => one.span.start <= span.end && one.span.end >= span.start);
}

/** Whether the finding has the fix that all of its check would be given. */
function isOf(diagnosis: Diagnosis, code: string): boolean {
  return diagnosis.code === code && onlyFix(diagnosis) !== undefined;
}

/** Where there are several the author must choose. */
function onlyFix(diagnosis: Diagnosis): Fix | undefined {
  const [fix, ...others] = diagnosis.fixes();
  return others.length === 0 ? fix : undefined;
}

function together(
  wanted: readonly (Fix | undefined)[],
  service: Service,
): WorkspaceEdit | undefined {
  const set = new FixSet();
  for (const fix of wanted) if (fix) set.take(fix);
  if (set.size === 0) return undefined;
  const edits = [...set.edits].map(([uri, list]) => ({ uri, edits: list }));
  return toWorkspaceEdit({ edits }, service);
}
