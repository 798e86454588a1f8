/** A power device is screwed to its heat sink without a torque. */
import type { Guide } from "../model/guide.ts";
import type { Part } from "../model/parts.ts";
import { printAmount } from "../quantity/printing.ts";
import { type PackageTorque, packageTorque } from "../trade/fasteners/packageTorque.ts";
import type { Check, Finding, Fix } from "./check.ts";
import { type Clamping, clampings, packageText, saysTorque } from "./mechanics/clamping.ts";
import { replace } from "./places.ts";
import { listNames } from "./words.ts";

export const check: Check = {
  meta: {
    code: "torque-missing",
    summary: "A power device is screwed down without a torque.",
    severity: "warning",
    source: "Mounting instructions of semiconductor makers",
    late: true,
    tags: ["figures"],
  },
  *guide(guide: Guide): Generator<Finding> {
    for (const clamping of clampings(guide)) {
      if (!saysTorque(clamping.step)) yield finding(clamping);
    }
  },
};

function finding({ screws, devices, step }: Clamping): Finding {
  const torque = leastOf(devices);
  return {
    at: { piece: screws.piece, span: screws.mark.span },
    message: () =>
      `${listNames(devices)} ${devices.length === 1 ? "is" : "are"} screwed down here without a torque. Too loose, they run hot; too tight, the tab bends or the insulator breaks. ${advice(torque)}`,
    fixes: torque ? [() => write(devices, torque, { screws, devices, step })] : [],
  };
}

function advice(torque: PackageTorque | undefined): string {
  if (!torque) return "Write the torque that the data sheet gives, as {torque(…) = …}.";
  const [usual, most] = [torque.recommended, torque.most].map((one) => printAmount(one, "N·m"));
  return `State it: ${usual} for a ${torque.name}, at most ${most} (${torque.source}); the part's own data sheet comes first.`;
}

/** Of several packages the one that stands least. */
function leastOf(devices: readonly Part[]): PackageTorque | undefined {
  const torques = devices.map((device) => packageTorque(packageText(device)));
  const known = torques.filter((one) => one !== undefined);
  return known.length === torques.length ? known.sort((a, b) => a.most - b.most)[0] : undefined;
}

function write(devices: readonly Part[], torque: PackageTorque, { screws }: Clamping): Fix {
  const names = devices.map(({ name }) => name).join(", ");
  const value = printAmount(torque.recommended, "N·m").replace("\u00a0", " ");
  const { end } = screws.mark.span;
  return replace(
    screws.piece,
    { start: end, end },
    ` {torque(${names}) = ${value}}`,
    `Write the torque that makers recommend, ${value}`,
  );
}
