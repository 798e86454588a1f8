/** What the columns of a guide's table hold, by their header and their cells. */
import type { GuideTable, TableCell } from "../../model/guideTable.ts";
import { isPlain } from "../../model/guideTable.ts";
import { headerName } from "../../model/list/headerWords.ts";
import type { Meaning } from "../../model/list/partsList.ts";
import { isDesignatorList } from "../../syntax/designatorList.ts";
import type { Language } from "../../text/language.ts";
import { bandRuns } from "../marking/bandRuns.ts";
import { worded } from "../marking/worded.ts";

/** `colours`: bands of resistors, or the colours of lamps. */
export type ColumnKind =
  | "designators"
  | "value"
  | "colours"
  | "tolerance"
  | "power"
  | "voltage"
  | "current"
  | "count";

const BY_MEANING: { readonly [meaning in Meaning]?: ColumnKind } = {
  designator: "designators",
  value: "value",
  tolerance: "tolerance",
  power: "power",
  voltage: "voltage",
  current: "current",
  quantity: "count",
};

const COLOURS =
  /^(?:(?:colou?r)?[ -]?(?:rings?|bands?|stripes?)|colou?rs?(?: codes?| bands?)?|(?:farb)?(?:ringe|streifen)|farben?|farbcode|anneaux|couleurs?|code des couleurs|bagues|(?:kleur)?ringen|kleuren?|kleurcode|bandas|anillos|colores|color|código de colores)$/iu;

/** Names of quantities that heads of value columns have and parts lists do not. */
const VALUES =
  /^(?:resistance|capacitance|inductance|resistor|capacitor|inductor|widerstand|kapazität|kondensator|induktivität|résistance|capacité|inductance|weerstand|capaciteit|condensator|resistencia|capacidad|condensador)$/iu;

/** The kind of each column; undefined where it holds something else. */
export function columnKinds(
  table: GuideTable,
  language: Language | undefined,
): readonly (ColumnKind | undefined)[] {
  return table.header.map((header, place) => {
    const named = byHeader(header.text);
    if (named) return named;
    const cells = table.rows
      .map((row) => row[place])
      .filter((cell): cell is TableCell => cell !== undefined && isPlain(cell));
    if (most(cells, ({ text }) => isDesignatorList(text))) return "designators";
    if (language && most(cells, ({ block }) => bandRuns(worded(block), language).length > 0)) {
      return "colours";
    }
    return undefined;
  });
}

function byHeader(text: string): ColumnKind | undefined {
  if (COLOURS.test(text)) return "colours";
  if (VALUES.test(text)) return "value";
  const ranks = headerName(text)?.ranks;
  if (!ranks) return undefined;
  const [meaning, rank] = [...ranks].sort((a, b) => a[1] - b[1])[0] ?? [];
  // Loose names, such as `Type` or `Part`, tell too little beside other columns.
  return meaning && rank === 0 ? BY_MEANING[meaning] : undefined;
}

function most(cells: readonly TableCell[], is: (cell: TableCell) => boolean): boolean {
  return cells.length > 0 && cells.filter(is).length * 3 >= cells.length * 2;
}
