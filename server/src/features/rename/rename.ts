/** Renames a part, a label or a figure's name in one guide and its parts list. */
import { placeOf } from "../../checks/verdict.ts";
import type { GuideState } from "../../model/guideState.ts";
import { columnNames } from "../../model/list/columnNames.ts";
import type { Part } from "../../model/parts.ts";
import { designatorKey } from "../../syntax/designators.ts";
import { namingsOf } from "../naming/figureNamings.ts";
import type { RenameEdit } from "./edit.ts";
import { renameInGuide } from "./guideText.ts";
import { renameInList } from "./listText.ts";
import { figureNameProblem, labelProblem, partNameProblem } from "./newNames.ts";
import type { RenameTarget } from "./target.ts";

export type Renamed =
  | { readonly edits: readonly RenameEdit[] }
  /** Why it cannot be done. */
  | { readonly problem: string };

/** Edits for the guide in which the target was found. */
export function rename(guide: GuideState, target: RenameTarget, to: string): Renamed {
  if (to === target.name) return { edits: [] };
  switch (target.kind) {
    case "part":
      return renamePart(guide, target.part, to);
    case "label":
      return renameLabel(guide, target.name, to);
    case "figure":
      return renameFigure(guide, target.name, to);
  }
}

/** The same part of the list in another guide that uses the list. */
export function samePart(guide: GuideState, part: Part): Part | undefined {
  return guide.parts.find(
    (one) =>
      one.list.uri === part.list.uri &&
      designatorKey(one.name) === designatorKey(part.name) &&
      one.line.board === part.line.board,
  );
}

function renamePart(guide: GuideState, part: Part, to: string): Renamed {
  const problem = partNameProblem(guide, part, to);
  if (problem) return { problem };
  const name = { from: part.name, to };
  const columns = columnNames(guide.frontMatter);
  const inList = renameInList(guide, part, name, { columns });
  if ("problem" in inList) return inList;
  const { uri } = part.list;
  return {
    edits: [
      ...inList.edits.map((edit): RenameEdit => ({ uri, ...edit, kind: "list" })),
      ...renameInGuide(guide, part, name),
    ],
  };
}

function renameLabel(guide: GuideState, from: string, to: string): Renamed {
  const problem = labelProblem(guide, to);
  if (problem) return { problem };
  const uses = [...guide.references()].filter(({ name }) => name === from);
  const edits = [...guide.labels(from), ...uses].map(
    (anchor): RenameEdit => ({ ...placeOf(anchor), text: to, kind: "mark" }),
  );
  return { edits };
}

function renameFigure(guide: GuideState, key: string, to: string): Renamed {
  const problem = figureNameProblem(guide, to);
  if (problem) return { problem };
  const edits: RenameEdit[] = [];
  for (const figure of guide.figures.all()) {
    for (const naming of namingsOf(figure, guide)) {
      if (naming.key === key) edits.push({ ...placeOf(naming.at), text: to, kind: "figure" });
    }
  }
  return { edits };
}
