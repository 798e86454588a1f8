/** Settings as a client may send them, by mistake or on purpose. */
import { expect, test } from "vitest";
import { readSettings } from "../../server/src/lsp/settings.ts";
import { DEFAULT_SETTINGS } from "../../server/src/service.ts";

const FOLDERS = ["file:///kit"];

test("what is sent is taken", () => {
  const section = {
    heightTolerance: 0,
    productStandard: "IEC 61010-1",
    storedEnergy: 0.1,
    derating: { power: 100, voltage: 50 },
    limits: { "long-step": 40 },
    checks: { "long-step": "off", "missing-part": "info" },
    listsOutsideWorkspace: true,
    partHints: true,
  };
  expect(readSettings(section, FOLDERS)).toEqual({
    ...section,
    checks: { "long-step": "off", "missing-part": "information" },
    folders: FOLDERS,
  });
});

test.each([
  [undefined],
  ["all"],
  [{ heightTolerance: -1, storedEnergy: "0.5", productStandard: "IEC 0", derating: [60] }],
  [{ derating: { power: 0, voltage: 101 }, limits: { "long-step": 0 }, partHints: "yes" }],
  [{ limits: [], checks: { "long-step": "loud", "missing-part": 1 }, listsOutsideWorkspace: 1 }],
  [{ checks: "off", limits: 3 }],
])("what is missing or of the wrong kind keeps its default: %j", (section) => {
  const { folders, ...settings } = readSettings(section, FOLDERS);
  const { folders: _, ...defaults } = DEFAULT_SETTINGS;
  expect(folders).toEqual(FOLDERS);
  expect(settings).toEqual({ ...defaults, limits: {}, checks: {} });
});
