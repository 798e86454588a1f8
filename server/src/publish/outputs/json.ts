/** The model of the guide as JSON with its schema, for anyone's own tools. */
import schema from "../../../docs/guide.schema.json";
import { guideModel } from "../model/guideModel.ts";
import { jsonText } from "../model/jsonText.ts";
import { titleOf } from "../title.ts";
import type { Output } from "./output.ts";

export const JSON_MODEL = {
  name: "json",
  summary: "parts, steps, figures and all else as JSON, with its schema",
  write: ({ guide, errors }) => ({
    files: [
      {
        name: "guide.json",
        content: () => ({ stretches: jsonText(guideModel(guide, errors)) }),
        mark: GUIDE_MARK,
        titleMark: `"title": ${JSON.stringify(titleOf(guide) ?? null)}`,
      },
      {
        name: "guide.schema.json",
        content: () => ({ stretches: jsonText(schema) }),
        mark: `"$id": "${schema.$id}"`,
      },
    ],
    faults: [],
  }),
} as const satisfies Output;

const GUIDE_MARK = '"generator": "Kitquill"';
