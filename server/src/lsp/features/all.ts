/** The features that the language server offers. They are loaded when a guide has been checked or the first request comes. */
import { adopt } from "./adopt.ts";
import { codeActions } from "./codeActions.ts";
import { completion } from "./completion.ts";
import { definition } from "./definition.ts";
import type { Answers, Feature, FeatureContext } from "./feature.ts";
import { folding } from "./folding.ts";
import { highlight } from "./highlight.ts";
import { hover } from "./hover.ts";
import { inlayHints } from "./inlayHints.ts";
import { lenses } from "./lenses.ts";
import { links } from "./links.ts";
import { moveFiles } from "./moveFiles.ts";
import { outline } from "./outline.ts";
import { overview } from "./overview.ts";
import { preview } from "./preview.ts";
import { publish } from "./publish.ts";
import { references } from "./references.ts";
import { rename } from "./rename.ts";
import { revision } from "./revision.ts";
import { semanticTokens } from "./semanticTokens.ts";
import { signatureHelp } from "./signatureHelp.ts";
import { startGuide } from "./startGuide.ts";

const FEATURES: readonly Feature[] = [
  adopt,
  codeActions,
  completion,
  definition,
  folding,
  highlight,
  hover,
  inlayHints,
  lenses,
  links,
  moveFiles,
  outline,
  overview,
  preview,
  publish,
  references,
  rename,
  revision,
  semanticTokens,
  signatureHelp,
  startGuide,
];

/** All answers of the features. */
export function answersOf(context: FeatureContext): Answers {
  return Object.assign({}, ...FEATURES.map((feature) => feature(context)));
}
