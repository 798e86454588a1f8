/** The server in Neovim's own client, set up by the words of server/docs/other-editors.md. */
import { chmodSync, readFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { Cli } from "../cli/cli.ts";
import { hasNeovim, Neovim } from "./nvim.ts";

const PAGE = join(import.meta.dirname, "../../server/docs/other-editors.md");
const GUIDE = `---
title: Wren, a supply indicator
checks: { hazard-missing: off, polarity-note: off }
parts: parts.csv
---

## Board

1. Fit the resistor [R1].
2. Fit the capacitor [C1].
3. Fit the resistor [R2].
4. Fit the LED [R7].
`;
const LIST = `Designator,Quantity,Value,Footprint
R1,1,4k7,R_Axial_DIN0207_L6.3mm_D2.5mm
R2,1,1k,R_Axial_DIN0207_L6.3mm_D2.5mm
C1,1,100u,CP_Radial_D8.0mm_H11.5mm
D1,1,red,LED_D5.0mm_H12.0mm
`;

const required = process.env.CI === "true" || process.env.KITQUILL_EDITOR_TESTS === "required";
const runs = required || hasNeovim();
if (!runs) console.log("Skipped: the test in Neovim needs nvim; none was found.");

let cli: Cli;
let nvim: Neovim;

beforeAll(async () => {
  if (!runs) return;
  cli = await Cli.build();
  const folder = cli.folder({ "wren.md": GUIDE, "parts.csv": LIST });
  const tools = cli.folder({
    kitquill: `#!/bin/sh\nexec "${process.execPath}" "${cli.bundle}" "$@"\n`,
    "init.lua": /```lua\n([\s\S]*?)```/.exec(readFileSync(PAGE, "utf8"))![1]!,
  });
  chmodSync(join(tools, "kitquill"), 0o755);
  const env = { ...process.env, PATH: tools + delimiter + process.env.PATH, HOME: tools };
  nvim = new Neovim(folder, join(tools, "init.lua"), env);
  await nvim.ready();
  nvim.run("vim.cmd('silent edit wren.md')");
});

afterAll(async () => {
  await nvim?.stop();
  cli?.remove();
});

/** `line:column code` of every finding in a file, sorted. */
const findings = (name: string) => `(function()
  local shown = {}
  for _, one in ipairs(vim.diagnostic.get(vim.fn.bufnr("${name}"))) do
    table.insert(shown, (one.lnum + 1) .. ":" .. (one.col + 1) .. " " .. one.code)
  end
  table.sort(shown)
  return shown
end)()`;

/** The text in the window that floats above the others; empty while there is none. */
const FLOATING = `(function()
  for _, window in ipairs(vim.api.nvim_list_wins()) do
    if vim.api.nvim_win_get_config(window).relative ~= "" then
      return table.concat(vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(window), 0, -1, true), "\\n")
    end
  end
  return ""
end)()`;

const equals = (expected: unknown) => (answer: unknown) =>
  JSON.stringify(answer) === JSON.stringify(expected);

test.runIf(runs)("Neovim shows findings, tells, completes, renames and fixes", async () => {
  const faults = ["11:22 height-order", "12:17 unknown-part", "4:1 missing-part"];
  await nvim.eventually(findings("wren.md"), equals(faults));

  nvim.press("9Gf[lK");
  const hover = await nvim.eventually<string>(FLOATING, (text) => text !== "");
  expect(hover).toContain("4k7");
  expect(hover).toContain("2.5 mm");
  nvim.press("0");

  nvim.press("12Gci[<C-x><C-o>");
  const offered = await nvim.eventually<{ words: string[] }>(
    "{ words = vim.tbl_map(function(item) return item.word end, vim.fn.complete_info().items) }",
    ({ words }) => words.length > 0,
  );
  expect(offered.words[0]).toBe("D1");
  nvim.press("<C-y><Esc>");
  await nvim.eventually(findings("wren.md"), equals(["11:22 height-order"]));
  expect(nvim.lines("wren.md")[11]).toBe("4. Fit the LED [D1].");

  nvim.press("9Gf[l");
  nvim.run("vim.lsp.buf.rename('R9')");
  const line = "vim.fn.getline(9)";
  await nvim.eventually(line, equals("1. Fit the resistor [R9]."));
  expect(nvim.lines("parts.csv")[1]).toBe("R9,1,4k7,R_Axial_DIN0207_L6.3mm_D2.5mm");
  nvim.run("vim.cmd('silent wall')");
  await nvim.eventually(findings("wren.md"), equals(["11:22 height-order"]));

  nvim.run(CHOOSE);
  nvim.press("11Gf[l<Bslash>a");
  await nvim.eventually(findings("wren.md"), equals([]));
  expect(nvim.lines("wren.md")[9]).toContain("[R2]");

  nvim.press("9Gf[lgd");
  await nvim.eventually("vim.fn.expand('%:t')", equals("parts.csv"));
  expect(nvim.ask("vim.fn.line('.')")).toBe(2);
});

/** Neovim asks which action is wanted through a function that is there to be replaced. */
const CHOOSE = `vim.ui.select = function(all, _, take)
  for _, one in ipairs(all) do
    if one[2].title:find("^Move this step") then take(one) end
  end
end`;
