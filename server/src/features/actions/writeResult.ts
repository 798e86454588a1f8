/** Writes what a figure comes to behind its expression. */

import { shown } from "../../checks/figures/problems.ts";
import { placeOf } from "../../checks/verdict.ts";
import type { GuideState } from "../../model/guideState.ts";
import { figureAt } from "../figure/figureAt.ts";
import type { Action, Selection } from "./action.ts";

export function* writeResult(guide: GuideState, { uri, start }: Selection): Iterable<Action> {
  const figure = figureAt(guide, uri, start)?.figure;
  const value = figure?.evaluation?.value;
  if (!figure?.piece || !value || figure.formula?.isQuantity) return;
  const { stated, reading, expression, tolerance } = figure.figure;
  if (stated || reading || tolerance || !expression) return;
  const { end } = placeOf(figure.at("expression")).span;
  const result = shown(value);
  yield {
    title: `Write the result: ${result}`,
    kind: "rewrite",
    edits: [{ uri, edits: [{ span: { start: end, end }, text: ` = ${result}` }] }],
  };
}
