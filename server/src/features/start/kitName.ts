/**
 * What a kit is called, as far as the names of its files tell. Command line and editor share it, so it
 * imports nothing.
 */

/** Words that say only that the file is a parts list, in the languages of guides. */
const LIST_WORDS =
  /^(?:parts?|bom|lists?|partslist|bomlist|kit|liste|lista|lijst|teile|teileliste|bauteile|bauteilliste|bauteileliste|st(?:ü|ue)ckliste|nomenclature|composants|pi[eè]ces|components?|componentes|piezas|materiales|onderdelen|onderdelenlijst|stuklijst)$/i;

/** Words that name no kit where they stand alone. */
const NO_NAME =
  /^(?:v?\d[\d.]*[a-z]?|rev(?:ision)?[a-z\d.]*|final|new|old|draft|copy|export|main|of|bill|materials?|de|des|del|van|guide|manual|instructions?|anleitung|bauanleitung|manuel|notice|gu[ií]a|handleiding|index|readme|docs?|documents?|hardware|hw|pcb|board|production|fab|fabrication|manufacturing|gerbers?|outputs?|build|exports?|data|csv|src|home|user|desktop|downloads|te?mp)$/i;

/**
 * The first of the names that tells the kit, with a capital letter: `heron-parts` lists the parts of
 * Heron, `bom` tells nothing. Names are of files, without their ending, and folders.
 */
export function kitName(names: readonly string[]): string | undefined {
  for (const name of names) {
    const words = tellingWords(name).join(" ");
    if (words !== "") return words.charAt(0).toUpperCase() + words.slice(1);
  }
  return undefined;
}

/** The words of a name without those for a parts list; none where what is left names no kit. */
export function tellingWords(name: string): readonly string[] {
  const words = name.normalize("NFC").split(/[-_ ]+/);
  const left = words.filter((word) => word !== "" && !LIST_WORDS.test(word));
  return left.every((word) => NO_NAME.test(word)) ? [] : left;
}

/** File and folders of a path, the innermost first: `wren/bom.csv` gives `bom` and `wren`. */
export function namesOnPath(path: string): readonly string[] {
  const [file = "", ...folders] = path.split("/").filter(Boolean).reverse();
  return [file.replace(/(?<=.)\.\w+$/, ""), ...folders.slice(0, MOST_FOLDERS)];
}

/** Folders further out are the author's, not the kit's. */
const MOST_FOLDERS = 2;

export const NAMELESS = "New kit";
