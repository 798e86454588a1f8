import { split, type Verbs } from "./verbs.ts";

export const fr: Verbs = {
  actions: {
    fit: split(
      "soudez souder soude insérez insérer insère montez monter placez placer enfichez enficher pliez plier",
    ),
    drill: split(
      "percez percer perce fraisez fraiser ébavurez ébavurer limez limer sciez scier pointez pointer",
    ),
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
  leading: split("et puis ensuite enfin maintenant alors"),
  conditions: split("si s'il s'ils sinon"),
  closing: false,
  capitalNouns: false,
};
