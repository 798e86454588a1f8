import { split, type Verbs } from "./verbs.ts";

export const nl: Verbs = {
  actions: {
    fit: [
      ...split("*solderen plaats plaatsen monteer monteren steek steken insteken buig buigen"),
      "knip de draadjes",
      "knip de pootjes",
      "knip de poten",
      "knip de draadeinden",
      "draadjes afknippen",
      "pootjes afknippen",
    ],
    drill: split("*boren vijl vijlen *vijlen ontbraam ontbramen verzink verzinken"),
    fasten: split("schroef schroeven *schroeven vastdraaien aandraaien klink klinken"),
    wire: split("wikkel wikkelen *wikkelen twist knip knippen afknippen strip strippen"),
    glue: split("lijm lijmen vastlijmen plak plakken vastplakken smeer"),
    clean: [
      ...split("reinig reinigen schoonmaken veeg afvegen ontvet ontvetten"),
      "maak de * schoon",
      "maak het * schoon",
    ],
    operate: split(
      "schakel inschakelen uitschakelen afregelen instellen regel justeer kalibreer kalibreren",
    ),
  },
  neutral: split("vertin vertinnen"),
  leading: split("en dan daarna vervolgens nu eerst tenslotte"),
  conditions: split("als indien wanneer mocht"),
  closing: true,
  infinitiveMark: "te",
  capitalNouns: false,
};
