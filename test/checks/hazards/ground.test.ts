/** Voltages, charges and heat, against standards and worked figures. */
import { describe, expect, test } from "vitest";
import { groundOf } from "../../../server/src/checks/hazards/ground.ts";
import { GuideState } from "../../../server/src/model/guideState.ts";
import { DEFAULT_SETTINGS, type ServiceSettings } from "../../../server/src/service.ts";
import { guideOf } from "../../model/guides.ts";

/** The ground of a guide with these lines of front matter and of a list. */
function ground(more: string, list = "", settings: Partial<ServiceSettings> = {}) {
  const guide = guideOf(
    "## A\n\n1. Look.",
    `Designator,Value,Voltage,Power,Description\n${list}`,
    more,
  );
  const state = new GuideState(guide.pages, guide.kit, { ...DEFAULT_SETTINGS, ...settings });
  state.update();
  const { voltage, charged, hot } = groundOf(state);
  const told = (parts: ReadonlyMap<{ name: string }, string>) => [...parts.values()];
  return { voltage, charged: told(charged), hot: told(hot) };
}

describe("A voltage is dangerous", () => {
  // IEC 62368-1, ES1: 60 V d.c., as notes for radio examinations give it.
  test("above 60 V d.c., and not at it", () => {
    expect(ground("supply: { VCC: 60 V }\n").voltage).toBeUndefined();
    expect(ground("supply: { VCC: 61 V }\n").voltage).toBe(
      "VCC is up to 61 V, more than the 60 V that may be touched",
    );
  });

  test("at the worst case of its tolerance", () => {
    expect(ground("supply: { VCC: 55 V ± 10 % }\n").voltage).toContain("up to 60.5 V");
    expect(ground("supply: { VCC: 55 V ± 5 % }\n").voltage).toBeUndefined();
  });

  // Two rails of ±35 V are 70 V apart, above ES1 though each is below it (computed).
  test("between rails that are each below the limit", () => {
    expect(ground("supply: { VP: 35 V, VM: -35 V }\n").voltage).toBe(
      "VP and VM are up to 70 V apart, more than the 60 V that may be touched",
    );
    expect(ground("supply: { VP: 30 V, VM: -30 V }\n").voltage).toBeUndefined();
    expect(ground("supply: { VM: -70 V }\n").voltage).toContain("VM is up to -70 V");
  });

  // IEC 62368-1 table 4 (from memory of it): 42.4 V peak, which is 30 V rms.
  test("above 30 V rms of alternating voltage", () => {
    expect(ground("figures: { Vac(T1): 29.9 V }\n").voltage).toBeUndefined();
    expect(ground("figures: { Vac(T1): 30.1 V }\n").voltage).toContain("30.1 V rms, 42.6 V peak");
  });

  test("that a sum comes to", () => {
    const more = "supply: { VCC: 40 V }\nfigures: { V(C1): 2 * VCC }\n";
    expect(ground(more, "C1,10n,,,\n").voltage).toContain("V(C1) is up to 80 V");
  });

  // IEC 60335-1 8.1.4 as quoted in test reports: 42.4 V d.c. too.
  test("by the product standard that the settings name", () => {
    const more = "supply: { VCC: 48 V }\n";
    expect(ground(more).voltage).toBeUndefined();
    expect(ground(more, "", { productStandard: "IEC 60335-1" }).voltage).toContain("42.4 V");
  });
});

describe("A charge is dangerous", () => {
  // C V² / 2, computed: 10 000 µF at 45 V hold 10.1 J, 4700 µF at 63 V hold 9.33 J.
  test("above half a joule", () => {
    expect(ground("", "C1,10000u,45 V,,\nC2,4700u,63 V,,\n").charged).toEqual([
      "C1 holds 10.1 J at 45 V, its rating",
      "C2 holds 9.33 J at 63 V, its rating",
    ]);
    expect(ground("", "C1,470u,45 V,,\n").charged).toEqual([]);
  });

  test("at the rail that the capacitor stands, and at the voltage that a figure gives", () => {
    const list = "C1,10000u,50 V,,\n";
    expect(ground("supply: { VP: 40 V, VM: -40 V }\n", list).charged).toEqual([
      "C1 holds 8 J at 40 V, the highest rail it stands",
    ]);
    expect(ground("supply: { VCC: 40 V }\nfigures: { V(C1): 5 V }\n", list).charged).toEqual([]);
  });

  test("above the energy that the settings name", () => {
    expect(ground("", "C1,470u,45 V,,\n", { storedEnergy: 0.2 }).charged).toHaveLength(1);
  });

  // IEC 62368-1 5.5.2.2: 60 V within 2 s. Computed: 10 000 µF, 4.7 kΩ, 90 V → 60 V in 19.1 s.
  // Here the energy must fall to 0.5 J, too: to 10 V, in R C ln(90/10) = 103 s.
  test("unless its bleeder empties it within 2 s", () => {
    const slow = "figures: { V(C1): 90 V, bleeder(C1): 4.7 kΩ }\n";
    expect(ground(slow, "C1,10000u,100 V,,\n").charged).toEqual([
      "C1 holds 40.5 J at 90 V and takes 103 s to become harmless through its bleeder",
    ]);
    // Computed: 0.22 µF with 1 MΩ from 373 V → 60 V takes 0.402 s; it holds 0.015 J.
    const quick = "figures: { V(C1): 373 V, bleeder(C1): 1 MΩ }\n";
    expect(ground(quick, "C1,220n,400 V,,\n", { storedEnergy: 0.01 }).charged).toEqual([]);
  });
});

describe("A part is hot", () => {
  // Bare metal of 70 °C burns at a touch: EN 563, figure 2, and ISO 13732-1.
  test("above 70 °C", () => {
    const list = "Q1,BD139,,,\n";
    expect(ground("figures: { Tj(Q1): 70 °C }\n", list).hot).toEqual([]);
    expect(ground("figures: { Tj(Q1): 112 °C }\n", list).hot).toEqual([
      "Q1 is hot: its junction reaches 112 °C, and 70 °C burn at a touch",
    ]);
    expect(ground("figures: { rise(Q1): 50 K }\n", list).hot).toHaveLength(1);
    expect(ground("figures: { rise(Q1): 40 K }\n", list).hot).toEqual([]);
  });

  // Half of the rating is the usual design limit (common practice).
  test("when it is a resistor above half its rating", () => {
    const list = "R1,100R,,2 W,\n";
    expect(ground("figures: { I: 0.11 A, P(R1): I^2 * R1 }\n", list).hot).toEqual([
      "R1 takes 1.21 W of its 2 W and gets hot",
    ]);
    expect(ground("figures: { I: 0.09 A, P(R1): I^2 * R1 }\n", list).hot).toEqual([]);
  });

  test("when it is a heat sink or a valve", () => {
    expect(ground("", "HS1,8 K/W,,,heat sink\nV1,EL84,,,vacuum tube\n").hot).toEqual([
      "HS1 is a heat sink",
      "V1 is a valve",
    ]);
  });
});
