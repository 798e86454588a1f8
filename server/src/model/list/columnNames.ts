import type { FrontMatter } from "../../syntax/frontMatter.ts";
import type { Overrides } from "./columns.ts";
import { MEANINGS } from "./partsList.ts";

/** The columns of the parts list that the guide's `columns` key names, by meaning. */
export function columnNames({ columns }: FrontMatter): Overrides {
  const names: Overrides = {};
  for (const { name, value } of columns) {
    const meaning = MEANINGS.find((one) => one === name);
    if (meaning) names[meaning] = value;
  }
  return names;
}
