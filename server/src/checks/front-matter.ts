/** The front matter says something that cannot be read, or that fits nothing in the kit. */
import type { Guide } from "../model/guide.ts";
import type { FrontMatter, FrontMatterProblem } from "../syntax/frontMatter.ts";
import type { Check, Finding } from "./check.ts";
import { danglingNames } from "./frontMatter/danglingNames.ts";

export const check: Check = {
  meta: {
    code: "front-matter",
    summary: "The front matter cannot be read, or names what the kit does not have.",
    severity: "error",
    source: "YAML 1.2.2, and the keys of a guide",
    tags: ["form"],
  },
  *guide(guide) {
    for (const { uri, frontMatter } of guide.pages) {
      for (const problem of frontMatter?.problems ?? []) yield asFinding(uri, problem);
    }
    for (const problem of knownNames(guide)) {
      yield { ...asFinding(guide.pages[0]!.uri, problem), severity: "warning" };
    }
  },
};

function asFinding(uri: string, { span, message, suggestion }: FrontMatterProblem): Finding {
  return {
    at: { uri, span },
    message: () => message,
    fixes: suggestion
      ? [
          () => ({
            title: suggestion.title,
            safe: suggestion.safe ?? false,
            edits: [{ uri, edits: [{ span: suggestion.span, text: suggestion.text }] }],
          }),
        ]
      : [],
  };
}

interface Looked {
  readonly parts: Guide["parts"];
  readonly problems: readonly FrontMatterProblem[];
}

const looked = new WeakMap<FrontMatter, Looked>();

/** Looks names up again only when the front matter or the lists have changed. */
function knownNames(guide: Guide): readonly FrontMatterProblem[] {
  const known = looked.get(guide.frontMatter);
  if (known?.parts === guide.parts) return known.problems;
  const problems = danglingNames(guide);
  looked.set(guide.frontMatter, { parts: guide.parts, problems });
  return problems;
}
