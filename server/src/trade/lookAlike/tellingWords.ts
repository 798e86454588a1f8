/** Words that tell parts apart that look alike, in the five languages. Common practice. */
import type { Language } from "../../text/language.ts";
import { stemLists } from "../../text/stemLists.ts";
import type { StemList } from "../../text/stems.ts";

const WORDS: Readonly<Record<Language, readonly string[]>> = {
  en: [
    ..."confuse* mistak* swap* exchange* print printed imprint* marked marking* labelled labeled lettering magnifier* differ* multimeter* ohmmeter*".split(
      " ",
    ),
    ...["look alike", "looks alike", "look the same", "looks the same", "same case", "mix up"],
    ...["mixed up", "tell apart", "tell them", "read the", "read its", "read each", "measure it"],
    ...["measure each", "measure them", "colour code*", "color code*", "colour ring*"],
    ...["colour band*", "color band*"],
  ],
  de: "verwechs* aufdruck* bedruck* beschrift* vertausch* unterscheid* ablesen lies markier* kennzeich* lupe* multimeter* ohmmeter* nachmessen messen farbring* farbcode*".split(
    " ",
  ),
  fr: [
    ..."confond* confusion ressembl* marqu* inscri* lisez lire distingu* différ* échang* loupe* multimètre* ohmmètre* mesurez mesurer".split(
      " ",
    ),
    ...["même aspect", "même boîtier", "code couleur*", "code des couleurs"],
  ],
  nl: [
    ..."verwissel* verwar* opdruk* gemerkt lees aflezen verschil* onderscheid* loep* multimeter* ohmmeter* meet nameten kleurcode* kleurring*".split(
      " ",
    ),
    ...["lijken op", "hetzelfde uit"],
  ],
  es: [
    ..."confund* confusión parec* marcad* impres* inscripción lea leer distingu* difer* intercambi* lupa* multímetro* polímetro* mida medir".split(
      " ",
    ),
    ...["código de color*", "mismo encapsulado"],
  ],
};

const LISTS = stemLists(WORDS);

/** Words that say how to tell a part from its like. */
export function tellingWords(language: Language): StemList<true> {
  return LISTS[language];
}
