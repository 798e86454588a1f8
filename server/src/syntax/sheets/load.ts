/** What is bundled by itself and loaded only for files that need it (scripts/build.mjs). */
export { readNetlist } from "./netlist.ts";
export { readWorkbook } from "./readWorkbook.ts";
