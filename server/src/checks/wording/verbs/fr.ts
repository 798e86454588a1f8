import { split, type Verbs } from "./verbs.ts";

export const fr: Verbs = {
  actions: {
    fit: [
      ...split(
        "soude insérez insérer insère montez monter placez placer enfichez enficher pliez plier",
      ),
      "coupez les pattes",
      "couper les pattes",
      "coupez leurs pattes",
      "couper leurs pattes",
      "coupez ses pattes",
      "couper ses pattes",
      "coupez à ras",
      "couper à ras",
    ],
    drill: split("fraiser ébavurez ébavurer limez limer pointez pointer"),
    fasten: split("vissez visser visse serrez serrer boulonnez boulonner rivetez riveter"),
    wire: split(
      "bobinez bobiner enroulez enrouler torsadez torsader coupez couper dénudez dénuder sertissez sertir",
    ),
    glue: split("collez coller colle étalez étaler"),
    clean: split("nettoyez nettoyer essuyez essuyer dégraissez dégraisser"),
    operate: [
      ...split("réglez régler ajustez ajuster allumez allumer éteignez éteindre calibrez calibrer"),
      "mettez sous tension",
      "mettre sous tension",
      "mettez hors tension",
      "mettre hors tension",
    ],
  },
  neutral: split("étamez étamer"),
  leading: split("et puis ensuite enfin maintenant alors"),
  conditions: split("si s'il s'ils sinon"),
  closing: false,
  capitalNouns: false,
};
