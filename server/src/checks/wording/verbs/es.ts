import { split, type Verbs } from "./verbs.ts";

export const es: Verbs = {
  actions: {
    fit: [
      ...split("inserte insertar inserta monte montar monta coloque colocar coloca doble doblar"),
      "corte las patillas",
      "cortar las patillas",
      "corte sus patillas",
      "corte los terminales",
      "cortar los terminales",
      "corte lo que sobra",
    ],
    drill: split("lime limar lima desbarbe desbarbar"),
    fasten: split(
      "atornille atornillar atornilla apriete apretar aprieta enrosque enroscar remache remachar",
    ),
    wire: split(
      "bobine bobinar bobina enrolle enrollar enrolla trence trenzar corte cortar corta pele pelar",
    ),
    glue: split("pegue pegar pega encole encolar extienda extender"),
    clean: split("limpie limpiar limpia desengrase desengrasar"),
    operate: split(
      "ajuste ajustar ajusta encienda encender enciende apague apagar apaga calibre calibrar",
    ),
  },
  neutral: split("estañe estañar"),
  leading: split("y e luego después ahora primero finalmente entonces"),
  conditions: split("si"),
  closing: false,
  capitalNouns: false,
};
