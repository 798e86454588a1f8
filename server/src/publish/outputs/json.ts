/** The model of the guide as JSON with its schema, for anyone's own tools. */
import schema from "../../../docs/guide.schema.json";
import { guideModel } from "../model/guideModel.ts";
import type { Output } from "./output.ts";

export const JSON_MODEL = {
  name: "json",
  summary: "parts, steps, figures and all else as JSON, with its schema",
  write: ({ guide, errors }) => [
    { name: "guide.json", content: jsonText(guideModel(guide, errors)), mark: GUIDE_MARK },
    { name: "guide.schema.json", content: jsonText(schema), mark: `"$id": "${schema.$id}"` },
  ],
} as const satisfies Output;

const GUIDE_MARK = '"generator": "Kitquill"';

function jsonText(value: unknown): string {
  return `${JSON.stringify(value, undefined, 2)}\n`;
}
