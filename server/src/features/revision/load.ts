/** What is loaded when lists are compared with a guide in view, and not before. */
export { reviseGuide } from "./revision.ts";
