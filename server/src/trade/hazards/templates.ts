/**
 * Hazard notes to begin with, in our own words: what happens and how it is avoided, for the hazards
 * that a guide's steps bring. The author completes them; local rules and qualified practice decide.
 */
import { type Signal, signalWord } from "../../syntax/signalWords.ts";
import type { Language } from "../../text/language.ts";
import { type Hazard, harmOf, signalsFor } from "./hazards.ts";
import { hazardName } from "./lexicon.ts";

type Texts = Readonly<Partial<Record<Hazard, string>>>;

interface Template {
  readonly texts: Texts;
  /** That local rules and qualified practice decide. */
  readonly deferral: string;
  /** What is left to the author; stands in a comment. */
  readonly complete: string;
}

const TEMPLATES: Readonly<Record<Language, Template>> = {
  en: {
    texts: {
      "electric shock":
        "Touching parts under this voltage can kill. Disconnect the power, check with a meter that it is off, and keep one hand behind your back when you measure.",
      "stored charge":
        "The capacitors keep their charge after the power is off and give burns and shocks. Discharge them through a resistor and measure before you touch anything.",
      "hot surface":
        "It burns skin at a touch. Keep your fingers off, and wait until it has cooled.",
      fumes:
        "They irritate eyes and lungs. Work where the air moves, and keep your face out of them.",
      "eye injury": "Bits fly off faster than you can blink. Wear safety glasses.",
      "moving parts":
        "A tool that catches tears the work out of your hand. Clamp the work, wear no gloves, and tie long hair back.",
      "sharp edge":
        "Cut metal cuts skin. Take the burrs off first, and do not run a finger along the edge.",
      "heavy load":
        "It crushes fingers when it slips. Lift it with both hands and set it down on a firm base.",
      fire: "The solvent catches fire from a spark or a hot iron. Keep both away from it, and let it dry before you switch on.",
      "static discharge":
        "A spark that you do not feel destroys these parts. Wear a grounded wrist strap, and leave them in their foil until they are needed.",
      "wrong polarity":
        "A part that sits the wrong way round is destroyed when power comes on, and may take others with it. Turn each polarised part as the print on the board shows.",
    },
    deferral: "Local rules and qualified practice come first.",
    complete: "complete this note: what is special in this kit, and what must the builder do?",
  },
  de: {
    texts: {
      "electric shock":
        "Teile unter dieser Spannung zu berühren kann tödlich sein. Trennen Sie die Versorgung, prüfen Sie mit dem Messgerät, dass sie aus ist, und messen Sie mit einer Hand.",
      "stored charge":
        "Die Kondensatoren bleiben nach dem Abschalten geladen und geben Schläge und Verbrennungen. Entladen Sie sie über einen Widerstand und messen Sie nach, bevor Sie etwas berühren.",
      "hot surface":
        "Die Haut verbrennt bei der ersten Berührung. Halten Sie die Finger fern und warten Sie, bis das Teil abgekühlt ist.",
      fumes:
        "Sie reizen Augen und Lunge. Sorgen Sie für frische Luft und halten Sie das Gesicht aus dem Rauch.",
      "eye injury":
        "Stücke fliegen schneller weg, als ein Auge sich schließt. Tragen Sie eine Schutzbrille.",
      "moving parts":
        "Ein Werkzeug, das hakt, reißt das Werkstück aus der Hand. Spannen Sie es ein, tragen Sie keine Handschuhe und binden Sie lange Haare zurück.",
      "sharp edge":
        "Geschnittenes Metall schneidet in die Haut. Entgraten Sie es zuerst und fahren Sie nicht mit dem Finger an der Kante entlang.",
      "heavy load":
        "Rutscht es ab, quetscht es Finger. Heben Sie es mit beiden Händen und stellen Sie es fest ab.",
      fire: "Das Lösungsmittel entzündet sich an Funken und am heißen Lötkolben. Halten Sie beides fern und lassen Sie es trocknen, bevor Sie einschalten.",
      "static discharge":
        "Ein Funke, den man nicht spürt, zerstört diese Bauteile. Tragen Sie ein Erdungsarmband und lassen Sie die Teile bis zum Einbau in ihrer Folie.",
      "wrong polarity":
        "Ein Bauteil, das falsch herum sitzt, wird beim Einschalten zerstört und kann andere mitreißen. Setzen Sie jedes gepolte Bauteil so ein, wie es der Aufdruck der Platine zeigt.",
    },
    deferral: "Örtliche Vorschriften und fachkundige Praxis gehen vor.",
    complete: "Hinweis ergänzen: Was ist bei diesem Bausatz besonders, und was ist zu tun?",
  },
  fr: {
    texts: {
      "electric shock":
        "Toucher des pièces sous cette tension peut tuer. Coupez l'alimentation, vérifiez au multimètre qu'elle est coupée, et mesurez d'une seule main.",
      "stored charge":
        "Les condensateurs restent chargés après la coupure et donnent des secousses et des brûlures. Déchargez-les à travers une résistance et mesurez avant de toucher.",
      "hot surface":
        "La peau brûle au premier contact. Gardez les doigts à distance et attendez que la pièce refroidisse.",
      fumes:
        "Elles irritent les yeux et les poumons. Aérez la pièce et gardez le visage à l'écart.",
      "eye injury":
        "Des éclats partent plus vite que l'œil ne se ferme. Portez des lunettes de protection.",
      "moving parts":
        "Un outil qui accroche arrache la pièce de la main. Serrez la pièce, ne portez pas de gants et attachez les cheveux longs.",
      "sharp edge":
        "Le métal coupé entaille la peau. Ébavurez d'abord et ne passez pas le doigt sur le bord.",
      "heavy load":
        "Elle écrase les doigts si elle glisse. Soulevez-la à deux mains et posez-la sur un appui ferme.",
      fire: "Le solvant prend feu près d'une étincelle ou d'un fer chaud. Tenez-les à distance et laissez sécher avant la mise sous tension.",
      "static discharge":
        "Une étincelle que l'on ne sent pas détruit ces composants. Portez un bracelet antistatique et laissez-les dans leur emballage jusqu'au montage.",
      "wrong polarity":
        "Un composant monté à l'envers est détruit à la mise sous tension et peut en entraîner d'autres. Montez chaque composant polarisé dans le sens que montre la sérigraphie.",
    },
    deferral: "Les règles locales et la pratique qualifiée priment.",
    complete: "note à compléter : qu'a ce kit de particulier, et que doit faire le constructeur ?",
  },
  nl: {
    texts: {
      "electric shock":
        "Delen onder deze spanning aanraken kan dodelijk zijn. Schakel de voeding uit, controleer met de meter dat zij uit is, en meet met één hand.",
      "stored charge":
        "De condensatoren blijven na het uitschakelen geladen en geven schokken en brandwonden. Ontlaad ze via een weerstand en meet voordat u iets aanraakt.",
      "hot surface":
        "De huid verbrandt bij de eerste aanraking. Houd de vingers weg en wacht tot het afgekoeld is.",
      fumes: "Ze prikkelen ogen en longen. Zorg voor frisse lucht en houd het gezicht uit de rook.",
      "eye injury":
        "Stukjes vliegen sneller weg dan een oog zich sluit. Draag een veiligheidsbril.",
      "moving parts":
        "Gereedschap dat vastloopt trekt het werkstuk uit de hand. Klem het werkstuk vast, draag geen handschoenen en bind lang haar op.",
      "sharp edge":
        "Geknipt metaal snijdt in de huid. Ontbraam het eerst en ga niet met een vinger langs de rand.",
      "heavy load":
        "Als het wegglijdt, plet het vingers. Til het met beide handen en zet het op een stevige ondergrond.",
      fire: "Het oplosmiddel vat vlam door een vonk of een hete soldeerbout. Houd beide weg en laat het drogen voordat u inschakelt.",
      "static discharge":
        "Een vonk die u niet voelt, vernielt deze onderdelen. Draag een geaarde polsband en laat ze tot het monteren in hun folie.",
      "wrong polarity":
        "Een onderdeel dat verkeerd om zit, gaat bij het inschakelen stuk en kan andere meenemen. Plaats elk gepolariseerd onderdeel zoals de opdruk van de print laat zien.",
    },
    deferral: "Plaatselijke regels en vakkundige praktijk gaan voor.",
    complete:
      "vul deze opmerking aan: wat is bij deze bouwset bijzonder, en wat moet de bouwer doen?",
  },
  es: {
    texts: {
      "electric shock":
        "Tocar partes bajo esta tensión puede ser mortal. Desconecte la alimentación, compruebe con el multímetro que no hay tensión y mida con una sola mano.",
      "stored charge":
        "Los condensadores quedan cargados tras apagar y dan descargas y quemaduras. Descárguelos con una resistencia y mida antes de tocar nada.",
      "hot surface":
        "Quema la piel al primer contacto. Mantenga los dedos lejos y espere a que se enfríe.",
      fumes: "Irritan los ojos y los pulmones. Ventile el lugar y mantenga la cara fuera del humo.",
      "eye injury":
        "Los trozos salen más deprisa de lo que se cierra un ojo. Use gafas de seguridad.",
      "moving parts":
        "Una herramienta que se engancha arranca la pieza de la mano. Sujete la pieza, no lleve guantes y recoja el pelo largo.",
      "sharp edge":
        "El metal cortado corta la piel. Quite primero las rebabas y no pase el dedo por el borde.",
      "heavy load":
        "Si resbala, aplasta los dedos. Levántela con las dos manos y colóquela sobre una base firme.",
      fire: "El disolvente se inflama con una chispa o con el soldador caliente. Manténgalos lejos y deje secar antes de encender.",
      "static discharge":
        "Una chispa que no se nota destruye estos componentes. Use una pulsera antiestática y déjelos en su envoltorio hasta montarlos.",
      "wrong polarity":
        "Un componente montado al revés se destruye al conectar la alimentación y puede dañar otros. Monte cada componente polarizado como indica la serigrafía de la placa.",
    },
    deferral: "Las normas locales y la práctica cualificada tienen prioridad.",
    complete:
      "complete esta nota: ¿qué tiene de especial este kit y qué debe hacer el constructor?",
  },
};

/**
 * The lines of a hazard note in a language, quote signs included, and below it a comment that leaves
 * it to the author to complete. Undefined for a hazard that no step of ours brings.
 */
export function noteTemplate(hazard: Hazard, language: Language): readonly string[] | undefined {
  const { texts, deferral, complete } = TEMPLATES[language];
  const text = texts[hazard];
  if (text === undefined) return undefined;
  const word = signalWord(signalFor(hazard), language);
  return [
    `> **${word}: ${hazardName(hazard, language)}.** ${text} ${deferral}`,
    `> <!-- ${complete} -->`,
  ];
}

function signalFor(hazard: Hazard): Signal {
  return signalsFor(harmOf(hazard))[0]!;
}
