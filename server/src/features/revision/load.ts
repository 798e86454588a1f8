/** What is loaded when lists are compared with a guide in view, and not before. */
export { renumberRound } from "./renumber.ts";
export { reviseGuide } from "./revision.ts";
