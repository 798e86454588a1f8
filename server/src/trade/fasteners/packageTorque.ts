/** Mounting torque of power packages that are clamped with a screw, in N·m. */

export interface PackageTorque {
  readonly name: string;
  /** What the maker recommends; of a range, its lower end. */
  readonly recommended: number;
  /** More than this may crack the die or bend the tab. */
  readonly most: number;
  readonly source: string;
}

const ST = "STMicroelectronics TN1225";
const SANKEN = "Sanken, notes on handling transistors";

/** Where makers differ, the one that allows least. TO-264 and TO-3 from memory of their sources. */
const TABLE: readonly PackageTorque[] = [
  { name: "TO-220", recommended: 0.55, most: 0.7, source: ST },
  { name: "TO-247", recommended: 0.55, most: 1, source: ST },
  { name: "TO-3P", recommended: 0.686, most: 0.822, source: SANKEN },
  { name: "MT-200", recommended: 0.686, most: 0.822, source: SANKEN },
  { name: "TO-264", recommended: 0.4, most: 0.9, source: "IXYS data sheets" },
  { name: "TO-3", recommended: 0.6, most: 0.9, source: "Motorola AN1040" },
];

/** Packages with a hole or flange for screws, of which no torque is known here. */
const CLAMPED = /(?<![a-z\d])(?:TO-?126|SOT-?32|SOT-?227|TO-?66|TO-?218|TO-?225)(?!\d)/i;

const NAMED: readonly (readonly [RegExp, string])[] = [
  [/(?<![a-z\d])TO-?220(?!\d)/i, "TO-220"],
  [/(?<![a-z\d])TO-?247(?!\d)/i, "TO-247"],
  [/(?<![a-z\d])TO-?264(?!\d)/i, "TO-264"],
  [/(?<![a-z\d])(?:TO-?3-?P|TO-?3PN|SC-?65)(?![a-z\d])/i, "TO-3P"],
  [/(?<![a-z\d])MT-?200(?!\d)/i, "MT-200"],
  [/(?<![a-z\d])(?:TO-?3|TO-?204)(?![a-z\d])/i, "TO-3"],
];

/** The torque of the package that a footprint or description names: `TO-220-3_Vertical`. */
export function packageTorque(text: string): PackageTorque | undefined {
  const name = NAMED.find(([pattern]) => pattern.test(text))?.[1];
  return TABLE.find((one) => one.name === name);
}

/** Whether the text names a package that is made to be clamped with a screw. */
export function isClampedPackage(text: string): boolean {
  return CLAMPED.test(text) || packageTorque(text) !== undefined;
}

/** Names of the packages whose torque is known. */
export const TORQUE_PACKAGES: readonly string[] = TABLE.map((one) => one.name);
