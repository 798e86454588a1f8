import { split, type Verbs } from "./verbs.ts";

export const nl: Verbs = {
  actions: {
    fit: split(
      "soldeer solderen *solderen plaats plaatsen monteer monteren steek steken insteken buig buigen",
    ),
    drill: split(
      "boor boren *boren vijl vijlen *vijlen ontbraam ontbramen zaag zagen verzink verzinken",
    ),
    fasten: split("schroef schroeven *schroeven vastdraaien aandraaien klink klinken"),
    wire: split("wikkel wikkelen *wikkelen twist knip knippen afknippen strip strippen"),
    glue: split("lijm lijmen vastlijmen plak plakken vastplakken smeer"),
    clean: split("reinig reinigen schoonmaken veeg afvegen ontvet ontvetten"),
    operate: split(
      "schakel inschakelen uitschakelen afregelen instellen regel justeer kalibreer kalibreren",
    ),
  },
  leading: split("en dan daarna vervolgens nu eerst tenslotte"),
  conditions: split("als indien wanneer mocht"),
  closing: true,
  infinitiveMark: "te",
  capitalNouns: false,
};
