/** What is bundled by itself and loaded only when a guide is looked at (scripts/build.mjs). */
export { type Shown, ShownBlocks, type Splice } from "./preview/patch.ts";
export { GuidePreview } from "./preview/preview.ts";
