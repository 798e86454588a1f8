/** Settings as the client sends them, made safe. */
import type { Severity } from "../checks/check.ts";
import { DEFAULT_SETTINGS, type ServiceSettings } from "../service.ts";
import { isProductStandard } from "../trade/hazards/voltageLimits.ts";

const SEVERITIES: Readonly<Record<string, Severity | "off">> = {
  off: "off",
  hint: "hint",
  info: "information",
  information: "information",
  warning: "warning",
  error: "error",
};

/** Reads the `kitquill` section; whatever is missing or of the wrong kind keeps its default. */
export function readSettings(section: unknown, folders: readonly string[]): ServiceSettings {
  const given = isRecord(section) ? section : {};
  const { heightTolerance, productStandard, storedEnergy, listsOutsideWorkspace } = given;
  return {
    heightTolerance:
      typeof heightTolerance === "number" && heightTolerance >= 0
        ? heightTolerance
        : DEFAULT_SETTINGS.heightTolerance,
    limits: readLimits(given.limits),
    productStandard:
      typeof productStandard === "string" && isProductStandard(productStandard)
        ? productStandard
        : DEFAULT_SETTINGS.productStandard,
    storedEnergy:
      typeof storedEnergy === "number" && storedEnergy >= 0
        ? storedEnergy
        : DEFAULT_SETTINGS.storedEnergy,
    derating: readDerating(given.derating),
    checks: readChecks(given.checks),
    folders,
    listsOutsideWorkspace: listsOutsideWorkspace === true,
    partHints: given.partHints === true,
  };
}

function readChecks(given: unknown): Record<string, Severity | "off"> {
  const checks: Record<string, Severity | "off"> = {};
  if (!isRecord(given)) return checks;
  for (const [code, value] of Object.entries(given)) {
    const severity = typeof value === "string" ? SEVERITIES[value] : undefined;
    if (severity) checks[code] = severity;
  }
  return checks;
}

function readLimits(given: unknown): Record<string, number> {
  const limits: Record<string, number> = {};
  if (!isRecord(given)) return limits;
  for (const [code, value] of Object.entries(given)) {
    if (typeof value === "number" && value > 0) limits[code] = value;
  }
  return limits;
}

function readDerating(given: unknown): ServiceSettings["derating"] {
  const { power, voltage } = isRecord(given) ? given : {};
  const usual = DEFAULT_SETTINGS.derating;
  const share = (value: unknown, standard: number) =>
    typeof value === "number" && value > 0 && value <= 100 ? value : standard;
  return { power: share(power, usual.power), voltage: share(voltage, usual.voltage) };
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null;
}
