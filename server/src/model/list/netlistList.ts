/** The parts list in an XML netlist: a line for each component. */
import type { Netlist } from "../../syntax/sheets/netlist.ts";
import type { Overrides } from "./columns.ts";
import type { PartsList } from "./partsList.ts";
import { readSections } from "./readSections.ts";
import { HeaderLookup } from "./sections.ts";
import { ADVICE, type ListText, unreadable } from "./unreadable.ts";

/** `netlist`: what was read of the file's text, or why nothing was, and where. */
export function readNetlistList(
  file: ListText,
  netlist: Netlist | { problem: string; at: number },
  overrides: Overrides,
): PartsList {
  if ("problem" in netlist) {
    const end = Math.min(netlist.at, file.text.length);
    return unreadable(file, netlist.problem, { start: Math.max(0, end - 1), end });
  }
  const [header, ...rows] = netlist.rows;
  const source = { ...file, format: "netlist" } as const;
  const lookup = new HeaderLookup(Object.values(overrides));
  const list = header && readSections(source, [{ header, rows }], lookup, overrides);
  if (!list) return unreadable(file, `${NO_COMPONENTS} ${ADVICE}`);
  if (!netlist.isCut) return list;
  const span = list.lines.at(-1)!.span;
  const cut = { code: "unreadable-list", span, message: CUT } as const;
  return { ...list, problems: [cut, ...list.problems] };
}

const NO_COMPONENTS =
  "This XML file is no netlist: it has no components with a designator (`<comp ref=…>`), so no parts list is found in it.";
const CUT =
  "The netlist goes on, but only 200000 components and 2000000 of their values are read. Check that it is the right file.";
