/** The features that the language server offers; each registers itself with the connection. */
import { codeActions } from "./codeActions.ts";
import { completion } from "./completion.ts";
import { definition } from "./definition.ts";
import type { Feature } from "./feature.ts";
import { hover } from "./hover.ts";
import { overview } from "./overview.ts";
import { signatureHelp } from "./signatureHelp.ts";
import { startGuide } from "./startGuide.ts";

export const FEATURES: readonly Feature[] = [
  codeActions,
  completion,
  definition,
  hover,
  overview,
  signatureHelp,
  startGuide,
];
