/**
 * What micromark reads guides with: CommonMark, GFM, marks and figures, within limits. The constructs are
 * put together once, since doing it for each step costs more than parsing the step.
 */
import { parse } from "micromark";
import { gfm } from "micromark-extension-gfm";
import type { Construct, Extension, FullNormalizedExtension } from "micromark-util-types";
import { figures } from "../figures/construct.ts";
import { labelSet } from "../labels.ts";
import { marks } from "./construct.ts";
import { limitText, listOf } from "./limits.ts";
import { limitNesting } from "./nesting.ts";

/** GFM's autolinks look at every letter of a text; without one of these they find nothing. */
const MAY_AUTOLINK = /@|www\.|https?:/i;

const ALL = withLimits(true);
const WITHOUT_AUTOLINKS = withLimits(false);

function withLimits(autolinks: boolean): FullNormalizedExtension {
  const { constructs } = parse({ extensions: [gfm(), marks, figures] });
  if (!autolinks) dropAutolinks(constructs);
  limitText(constructs);
  limitNesting(constructs);
  return constructs;
}

function dropAutolinks({ text }: FullNormalizedExtension): void {
  for (const sign of Object.keys(text)) {
    const rest = listOf(text[sign]).filter(
      ({ name }) => !/^(?:www|protocol|email)Auto/.test(name ?? ""),
    );
    if (rest.length > 0) text[sign] = rest;
    else delete text[sign];
  }
}

/** The extension for one parse of `source`, with labels that are defined elsewhere. */
export function dialect(
  source: string,
  labels: readonly string[],
  footnotes: readonly string[],
): Extension {
  const constructs = MAY_AUTOLINK.test(source) ? ALL : WITHOUT_AUTOLINKS;
  // Sets the parse up when it comes to its first character, before any line is read.
  const first: Construct = {
    partial: true,
    tokenize(effects, ok, nok) {
      this.parser.constructs = constructs;
      this.parser.defined = new DefinedLabels(labels);
      this.parser.gfmFootnotes = new DefinedLabels(footnotes);
      return effects.attempt(constructs.document, ok, nok);
    },
  };
  // Signs that begin a quote or list have constructs of their own, which would come before the others'.
  const signs = [..."*+-0123456789>"].map((sign) => [sign.charCodeAt(0), first]);
  return { document: { null: first, ...Object.fromEntries(signs) } };
}

/** micromark's list of labels, which is asked at each bracket; thousands of labels must not slow it. */
class DefinedLabels extends Array<string> {
  readonly #elsewhere: ReadonlySet<string>;
  readonly #here = new Set<string>();

  constructor(elsewhere: readonly string[]) {
    super();
    this.#elsewhere = labelSet(elsewhere);
  }

  override includes(label: string): boolean {
    return this.#here.has(label) || this.#elsewhere.has(label);
  }

  override push(...labels: string[]): number {
    for (const label of labels) this.#here.add(label);
    return super.push(...labels);
  }
}
