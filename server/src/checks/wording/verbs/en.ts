import { split, type Verbs } from "./verbs.ts";

export const en: Verbs = {
  actions: {
    fit: [
      ...split("fit insert mount install place push seat bend"),
      "cut the leads",
      "cut its leads",
      "cut their leads",
      "cut off the leads",
      "trim the leads",
    ],
    drill: [...split("ream deburr saw punch file"), "tap the"],
    fasten: split("screw bolt tighten fasten rivet clamp"),
    wire: split("wind twist cut strip crimp"),
    glue: [
      ...split("glue cement bond spread"),
      "apply glue",
      "apply paste",
      "apply thermal",
      "apply epoxy",
    ],
    clean: split("clean wipe wash degrease"),
    operate: [
      ...split("switch adjust trim tune align calibrate"),
      "turn on",
      "turn off",
      "power up",
      "apply power",
      "connect the supply",
    ],
  },
  neutral: split("tin"),
  leading: split("and then now first next finally also please"),
  conditions: split("if unless should"),
  closing: false,
  capitalNouns: false,
};
