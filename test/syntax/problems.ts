/** What misses the dialect in a tree. */
import type { Root } from "mdast";
import type { SyntaxProblem } from "../../server/src/syntax/dialect.ts";
import { descendants } from "../../server/src/syntax/markdown.ts";

/** In document order of the nodes that show it. */
export function syntaxProblems(root: Root): SyntaxProblem[] {
  const problems: SyntaxProblem[] = [];
  for (const node of descendants(root)) {
    if (node.type === "almostMark") problems.push(node.problem);
    else if (node.type === "partMark") problems.push(...(node.mark.problems ?? []));
    else if (node.type === "figure") problems.push(...(node.figure.problems ?? []));
    else if (node.type === "definition" || node.type === "link") {
      if (node.data?.problem) problems.push(node.data.problem);
    }
  }
  return problems;
}
