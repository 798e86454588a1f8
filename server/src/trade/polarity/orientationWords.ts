/** Words that tell which way round a part goes, in the five languages. Common practice. */
import type { Language } from "../../text/language.ts";
import { stemLists } from "../../text/stemLists.ts";
import type { Word } from "../../text/stems.ts";

const WORDS: Readonly<Record<Language, readonly string[]>> = {
  en: [
    ..."polarity polarities polarised polarized orientation* orient orients oriented cathode* anode* notch* bevel* silkscreen facing faces positive negative plus minus".split(
      " ",
    ),
    ..."backwards reversed reverse stripe striped dimple chamfer*".split(" "),
    ...["way round", "way around", "right way", "wrong way", "same way", "pin 1", "pin one"],
    ...[
      "flat side*",
      "flat edge*",
      "flat face*",
      "flat of",
      "rounded side*",
      "metal side*",
      "printed side*",
    ],
    ...["metal tab*", "metal back*", "metal face*", "long lead*", "longer lead*", "long leg*"],
    ...["longer leg*", "short lead*", "shorter lead*", "short leg*", "shorter leg*"],
    ...["its ring", "the ring", "ring to", "ring of", "ring at", "ring on", "its band", "the band"],
    ...["band to", "band at", "dot to", "the dot", "a dot", "silk screen*", "outline on"],
    ...["the outline", "the print", "printed outline", "marked end", "lines up", "line up"],
  ],
  de: [
    ..."polung* polarität* gepolt verpol* ausrichtung* ausrichten ausgerichtet einbaurichtung* einbaulage* kathode* anode* kerbe* nase plus minus pluspol* minuspol* positiv* negativ* bestückungsdruck* bestückungsaufdruck* aufdruck* metallseite* ring streifen markierung* pin1".split(
      " ",
    ),
    ...["richtig herum", "falsch herum", "andersherum", "pin 1", "flache seite", "flachen seite"],
    ...["abgeflachte seite", "abgeflachten seite", "langes bein", "lange bein", "längere bein"],
    ...["langer draht", "längerer draht", "lange anschluss", "längere anschluss", "kurze bein"],
    ...["kürzere bein", "zeigt zu*", "zeigt nach", "zeigen zu*", "weist zu*", "der punkt"],
  ],
  fr: [
    ..."polarité* polarisé polarisée polarisés orientation* orienter orientez orienté orientée sens cathode* anode* encoche* détrompeur* méplat* anneau bague positif positive négatif négative sérigraphie* repère* biseau plus moins".split(
      " ",
    ),
    ...["à l'envers", "broche 1", "pin 1", "côté plat", "face plate", "face métallique"],
    ...["patte longue", "longue patte", "patte la plus longue", "patte courte", "la bande"],
    ...["face à", "vers le bord", "vers l'extérieur", "dans le bon sens"],
  ],
  nl: [
    ..."polariteit* gepolariseerd oriëntatie* kathode* anode* inkeping* nok plus min pluspool minpool positief positieve negatief negatieve opdruk* zeefdruk* streep streepje ring richting".split(
      " ",
    ),
    ...[
      "verkeerd om",
      "goed om",
      "juiste richting",
      "pen 1",
      "pin 1",
      "platte kant",
      "platte zijde",
    ],
    ...[
      "metalen kant",
      "lange poot",
      "langste poot",
      "lange pootje",
      "langste pootje",
      "korte poot",
    ],
    ...["wijst naar", "wijzen naar", "de stip", "het bandje"],
  ],
  es: [
    ..."polaridad* polarizado polarizada polarizados orientación* orientar oriente orientado sentido cátodo* ánodo* muesca* positivo positiva negativo negativa serigrafía* anillo franja raya bisel más menos".split(
      " ",
    ),
    ...["al revés", "pin 1", "patilla 1", "pata 1", "lado plano", "cara plana", "cara metálica"],
    ...["patilla larga", "pata larga", "patilla más larga", "pata más larga", "patilla corta"],
    ...["la banda", "la marca", "hacia el borde", "mirando hacia"],
  ],
};

const LISTS = stemLists(WORDS);

/** `marked +`, `hole "+"`: the sign is no word. */
const PLUS = /(?<![\p{L}\p{N}+])[+⊕](?![\p{L}\p{N}+])/u;

/** Whether a text says which way round something goes. */
export function tellsOrientation(
  text: string,
  words: readonly Word[],
  language: Language,
): boolean {
  return LISTS[language].has(words) || PLUS.test(text);
}
