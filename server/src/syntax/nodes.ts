/** What is asked of a Markdown node: where it stands, what it shows, and whether it moves parts. */
import type { Node, Nodes, Parent } from "mdast";
import type { Span } from "../text/span.ts";
import { MOVING_ROLES } from "./dialect.ts";

export function startOf(node: Node): number {
  return node.position!.start.offset!;
}

export function endOf(node: Node): number {
  return node.position!.end.offset!;
}

export function spanOf(node: Node): Span {
  return { start: startOf(node), end: endOf(node) };
}

/** Whether a mark in the block moves parts, so that it is a step; of bare words the parts list decides. */
export function movesParts(node: Parent): "yes" | "maybe" | "no" {
  let answer: "maybe" | "no" = "no";
  for (const child of node.children as Nodes[]) {
    const here = childMovesParts(child);
    if (here === "yes") return "yes";
    if (here === "maybe") answer = "maybe";
  }
  return answer;
}

function childMovesParts(node: Nodes): "yes" | "maybe" | "no" {
  if (node.type === "partMark") {
    if (!MOVING_ROLES.has(node.mark.role)) return "no";
    return node.mark.certain ? "yes" : "maybe";
  }
  return "children" in node ? movesParts(node) : "no";
}

/** The text a reader sees; marks and figures as written. */
export function plainText(node: Nodes): string {
  if (node.type === "html") return "";
  if ("value" in node && typeof node.value === "string") return node.value;
  if (node.type === "image") return node.alt ?? "";
  if (node.type === "break") return " ";
  if ("children" in node) return (node.children as Nodes[]).map(plainText).join("");
  return "";
}
