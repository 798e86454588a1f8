// Guides of any size, for measuring.

const PARTS_A_STEP = 6;
const STEPS_A_STAGE = 20;

const CHAIN = 20;

/**
 * A guide of `steps` steps and its parts list; `fault` plants one finding in every step, `figures` is
 * how many figures are spread over them: a chain of 20, and of the others every second on the rail;
 * `pictures` are spread likewise.
 */
export function synthesize(
  steps,
  { stageSize = STEPS_A_STAGE, fault = false, figures = 0, pictures = 0 } = {},
) {
  const lines = ["---", "title: Bench", "parts: parts.csv"];
  if (figures > 0) lines.push("supply: { VCC: 13.8 V ± 10 % }");
  lines.push("---", "");
  const rows = ["Designator,Quantity,Value,Footprint"];
  for (let step = 0; step < steps; step++) {
    if (stageSize > 0 && step % stageSize === 0) {
      lines.push("", `## Stage ${1 + step / stageSize}`, "");
    }
    const first = step * PARTS_A_STEP + 1;
    const last = first + PARTS_A_STEP - 1;
    const extra = fault ? `X${first}, ` : "";
    const every = figures > 0 ? Math.floor(steps / figures) : 0;
    const figure = every > 0 && step % every === 0 ? figureText(step / every, first) : "";
    lines.push(
      `${(step % 900) + 1}. Solder [${extra}R${first}–R${last} = 4k7] flush to the board and cut the leads; the bands read the same way round as in R1.${figure}`,
    );
    const spread = pictures > 0 ? Math.floor(steps / pictures) : 0;
    if (spread > 0 && step % spread === 0 && step / spread < pictures) {
      lines.push("", `   ![The board after step ${step + 1}](pictures/p${step / spread}.jpg)`, "");
    }
    rows.push(`R${first}–R${last},${PARTS_A_STEP},4k7,R_Axial_DIN0207_L6.3mm_D2.5mm`);
  }
  return { text: `${lines.join("\n")}\n`, list: `${rows.join("\n")}\n` };
}

function figureText(index, resistor) {
  if (index === 0) return " The chain begins with {s0 = VCC / 2} and states {2 * VCC = 1 V}.";
  if (index < CHAIN) return ` The next is {s${index} = s${index - 1} * 1.1 ± 1 %}.`;
  const name = `R${resistor}`;
  if (index % 2 === 0) return ` It takes {P(${name}) = VCC^2 / ${name}}.`;
  return ` It drops {V(${name}) = ${index} µA * ${name}}.`;
}
