/** Trade functions of torque and clamp force. */
import { packageTorque, TORQUE_PACKAGES } from "../fasteners/packageTorque.ts";
import { PROPERTY_CLASSES, proofLoad, propertyClassIn } from "../fasteners/strength.ts";
import type { Thread } from "../fasteners/threads.ts";
import { clampForce, DRY, REUSABLE, shareOfProof, tighteningTorque } from "../fasteners/torque.ts";
import { ofThread, THREAD } from "./fasteners.ts";
import { type Argument, number, type TradeFunction, word } from "./function.ts";

const CLASS = word("class", "property class of the screw", PROPERTY_CLASSES);
const TORQUE = number("torque", "tightening torque", "N·m", "rises");
const NUT_FACTOR = "0.2 plain and dry, 0.15 lubricated, 0.3 rusty";
const FORMULA = "T = K d F; Shigley, Mechanical Engineering Design; Machinery's Handbook";

function nutFactor(trend: "rises" | "falls") {
  return number("nutFactor", NUT_FACTOR, "1", trend, DRY);
}

function ofClass(
  thread: Argument | undefined,
  propertyClass: Argument | undefined,
  compute: (thread: Thread, propertyClass: string) => number,
): number {
  const known = propertyClassIn(String(propertyClass));
  return known ? ofThread(thread, (one) => compute(one, known)) : Number.NaN;
}

function warnOfFriction(factor: Argument | undefined): string | undefined {
  if (Number(factor) >= 0.1 && Number(factor) <= 0.35) return undefined;
  return "Nut factors of steel screws lie between 0.1 and 0.35: outside, the force has little to do with the torque.";
}

const clamp: TradeFunction = {
  name: "clampForce",
  parameters: [TORQUE, THREAD, nutFactor("falls")],
  unit: "N",
  summary: "Force with which a tightened screw clamps.",
  source: FORMULA,
  range: "Steel screws; friction makes the force scatter by ±30 %.",
  example: { written: "clampForce(0.55 N·m; M3)", args: [0.55, "M3", DRY] },
  compute: ([torque, thread, factor]) =>
    ofThread(thread, (one) => clampForce(Number(torque), one, Number(factor))),
  warn: ([, , factor]) => warnOfFriction(factor),
};

const tightening: TradeFunction = {
  name: "tighteningTorque",
  parameters: [
    THREAD,
    CLASS,
    number("share", "share of the proof load", "1", "rises", REUSABLE),
    nutFactor("rises"),
  ],
  unit: "N·m",
  summary: "Torque that loads a screw with a share of its proof load.",
  source: `${FORMULA}; proof stress ISO 898-1`,
  range: "Steel on steel. A soft part or package in the joint may stand less.",
  example: { written: "tighteningTorque(M3; 8.8)", args: ["M3", "8.8", REUSABLE, DRY] },
  compute: ([thread, propertyClass, share, factor]) =>
    ofClass(thread, propertyClass, (one, known) =>
      tighteningTorque(one, known, Number(share), Number(factor)),
    ),
  warn([, , share, factor]) {
    if (Number(share) > 0.9) {
      return "Above 90 % of the proof load a screw may stretch for good, since friction scatters. Take 75 % for joints that are opened again.";
    }
    return warnOfFriction(factor);
  },
};

const proof: TradeFunction = {
  name: "proofLoad",
  parameters: [THREAD, CLASS],
  unit: "N",
  summary: "Pull that a screw stands without lasting stretch.",
  source: "ISO 898-1; stainless screws: 0.2 % limit after ISO 3506-1",
  range: "Coarse metric threads M1.6 to M12 and unified threads of the same classes.",
  example: { written: "proofLoad(M3; 4.8)", args: ["M3", "4.8"] },
  compute: ([thread, propertyClass]) => ofClass(thread, propertyClass, proofLoad),
};

const share: TradeFunction = {
  name: "proofShare",
  parameters: [TORQUE, THREAD, CLASS, nutFactor("falls")],
  unit: "1",
  summary: "Share of its proof load that a torque puts on a screw: 1 is all of it.",
  source: `${FORMULA}; proof stress ISO 898-1`,
  range: "Steel screws; friction makes the force scatter by ±30 %.",
  example: { written: "proofShare(0.55 N·m; M3; 4.6)", args: [0.55, "M3", "4.6", DRY] },
  compute: ([torque, thread, propertyClass, factor]) =>
    ofClass(thread, propertyClass, (one, known) =>
      shareOfProof(Number(torque), one, known, Number(factor)),
    ),
  warn: ([, , , factor]) => warnOfFriction(factor),
};

const PACKAGE = word("package", "power package", TORQUE_PACKAGES);
const MAKERS = "STMicroelectronics TN1225; Sanken; TO-264 and TO-3 from memory of data sheets";

const recommended: TradeFunction = {
  name: "packageTorque",
  parameters: [PACKAGE],
  unit: "N·m",
  summary: "Torque that makers recommend for the screw of a power package.",
  source: MAKERS,
  range: "Steel screw and plain washer; a clip needs none. The part's own data sheet comes first.",
  example: { written: "packageTorque(TO-220)", args: ["TO-220"] },
  compute: ([name]) => packageTorque(String(name))?.recommended ?? Number.NaN,
};

const limit: TradeFunction = {
  name: "packageTorqueLimit",
  parameters: [PACKAGE],
  unit: "N·m",
  summary: "Torque above which a power package may crack or bend.",
  source: MAKERS,
  range: recommended.range,
  example: { written: "packageTorqueLimit(TO-220)", args: ["TO-220"] },
  compute: ([name]) => packageTorque(String(name))?.most ?? Number.NaN,
};

export const TORQUE_FUNCTIONS: readonly TradeFunction[] = [
  clamp,
  tightening,
  proof,
  share,
  recommended,
  limit,
];
