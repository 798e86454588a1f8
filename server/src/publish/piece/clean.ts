/** What of an author's HTML and links reaches a reader; everything else is taken out. */
import type { Root } from "hast";
import { type Schema, sanitize } from "hast-util-sanitize";
import { HOLE_TAG } from "./holes.ts";

/** Structure and emphasis: nothing that runs, loads, submits, or imitates a part of the page. */
const SCHEMA: Schema = {
  tagNames: [
    ..."a abbr b bdi bdo blockquote br caption cite code dd del details dfn div dl dt em".split(
      " ",
    ),
    ..."figcaption figure h1 h2 h3 h4 h5 h6 hr i img ins kbd li mark ol p pre q s samp small".split(
      " ",
    ),
    ..."span strong sub summary sup table tbody td tfoot th thead tr u ul var wbr".split(" "),
    HOLE_TAG,
  ],
  attributes: {
    a: ["href", "title"],
    abbr: ["title"],
    code: [["className", /^language-[\w-]+$/]],
    details: ["open"],
    div: [
      ["className", "note", "danger", "warning", "caution", "notice"],
      ["role", "note"],
    ],
    blockquote: [["className", "aside"]],
    img: ["src", "alt", "title", "width"],
    ol: ["start", "reversed", ["className", "substeps"]],
    td: ["colSpan", "rowSpan", ["className", "left", "center", "right"]],
    th: ["colSpan", "rowSpan", ["className", "left", "center", "right"], ["scope", "col"]],
    span: [["className", "kept"]],
    [HOLE_TAG]: ["dataIndex"],
    "*": ["lang", "dir"],
  },
  protocols: { href: ["http", "https", "mailto"], src: ["http", "https", "data"] },
  ancestors: { ...within("table", "caption tbody td tfoot th thead tr"), li: ["ol", "ul"] },
  clobber: [],
  required: {},
  strip: "script style template iframe object svg math textarea select noscript title".split(" "),
};

function within(ancestor: string, names: string): Record<string, string[]> {
  return Object.fromEntries(names.split(" ").map((name) => [name, [ancestor]]));
}

export function clean(root: Root): Root {
  const cleaned = sanitize(root, SCHEMA);
  // A root of one child comes back as that child.
  return cleaned.type === "root" ? cleaned : { type: "root", children: [cleaned as never] };
}
