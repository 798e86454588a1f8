import { readFileSync } from "node:fs";
import { test } from "vitest";
import { renderTemplate } from "../../server/src/publish/piece/template.ts";

test("x", () => {
  const t =
    'Intro <b>bold [R1]</b> and <img src=x onerror=alert(1)> <script>alert(1)</script> [x](javascript:alert(1)) `c` Q1&lt;\n\n<div>\n\nblock [^1]\n\n## Stage R5\n\n> [!CAUTION]\n> Sharp edges [R1].\n\n1. Fit [R1–R4] {V = 3 V} &lt; ab <b>x</b> {read V(TP1) = 3 V ± 5 %}\n\n   ![alt](a.png "t")\n   - [x] task\n   1. sub\n\n| a | b |\n|--:|---|\n| [R1] | x |\n\n> **WARNING: foo.** bar\n\n- bul [R2]\n- two\n\n[^1]: Foot *note*.\n';
  const r = renderTemplate(t, { labels: [], footnotes: [], definitions: [] });
  for (const b of [...r.blocks, ...r.footnotes]) console.log(JSON.stringify(b));
  const text = readFileSync("samples/heron/finish.md", "utf8");
  const pieces = text.split(/^(?=## |\d+\. )/m);
  let t0 = performance.now();
  let n = 0;
  for (let i = 0; i < 5; i++) {
    t0 = performance.now();
    n = 0;
    for (const p of pieces) {
      renderTemplate(p, { labels: [], footnotes: [], definitions: [] });
      n++;
    }
    console.log(n, (performance.now() - t0) / n);
  }
});
