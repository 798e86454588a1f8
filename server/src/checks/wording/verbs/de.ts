import { split, type Verbs } from "./verbs.ts";

export const de: Verbs = {
  actions: {
    fit: split(
      "*löten bestücke bestücken setze setzen einsetzen stecke stecken einstecken montiere montieren biege biegen abbiegen kürzen",
    ),
    drill: split("*bohren senke senken entgrate entgraten feile feilen körne körnen ankörnen"),
    fasten: split(
      "schraube schrauben schraubt *schrauben festziehen anziehen nieten klemme klemmen",
    ),
    wire: split(
      "wickle wickeln wickelt *wickeln verdrille verdrillen schneide schneiden ablängen isoliere abisolieren",
    ),
    glue: split("klebe kleben klebt *kleben auftragen aufstreichen"),
    clean: split("reinige reinigen säubere säubern wische wischen abwischen entfette entfetten"),
    operate: split(
      "schalte schalten einschalten ausschalten stelle einstellen gleiche abgleichen justiere justieren kalibriere kalibrieren",
    ),
  },
  neutral: split("verzinnen verzinne"),
  leading: split(
    "und dann danach anschließend zuerst zunächst nun jetzt zuletzt schließlich bitte",
  ),
  conditions: split("wenn falls sollte sofern"),
  closing: true,
  infinitiveMark: "zu",
  capitalNouns: true,
};
