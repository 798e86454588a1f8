/** Words about what power devices are screwed to, as patterns of `text/stems.ts`. */

export const COOLING_WORDS: readonly string[] = [
  "heat sink*|heatsink*|cooling fin*|tab|tabs",
  "kühlkörper*|kühlblech*|kühlprofil*|kühlfahne*|kühlwinkel*",
  "dissipateur*|radiateur*|languette*",
  "koelplaat*|koelplaten|koellichaam*|koelprofiel*|koelvin*|koelblok*",
  "disipador*|radiador*|aleta*|pestaña*",
].flatMap((words) => words.split("|"));

/** A torque in a text: `0.5 N·m`, `50 Ncm`, `5 kgf·cm`, `5 in-lb`. */
export const TORQUE_TEXT =
  /\d\s?(?:[cm]?N[ ·⋅*.-]?c?m(?![\p{L}\p{N}])|kgf?[ ·⋅*.-]?c?m(?![\p{L}\p{N}])|(?:ozf?|lbf?)[ ·⋅*.-]?(?:in|ft)(?![\p{L}])|(?:in|ft)[ ·⋅*.-]?(?:ozf?|lbf?)(?![\p{L}]))/iu;
