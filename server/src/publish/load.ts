/** What is bundled by itself and loaded only when a guide is looked at (scripts/build.mjs). */
export { GuidePreview } from "./preview/preview.ts";
