/**
 * Body heights from the figures that footprint names carry: the naming of the KiCad libraries
 * (R_Axial_DIN0207_L6.3mm_D2.5mm_P10.16mm_Horizontal) and that of IPC-7351 (CAPPRD250W60D500H1100;
 * its letters from memory).
 */

export interface NamedHeight {
  readonly mm: number;
  /** What the figure is, without the footprint's name. */
  readonly what: string;
}

/** What is left between the board and the bend above a part that stands on one end, and below a disc. */
const LEAD_ABOVE = 1;
/** A disc stands on its leads' coating: its diameter and one to two millimetres (common practice). */
const DISC_STAND = 1.5;

/** The height that the figures in a footprint's name give, if they give one. */
export function footprintHeight(name: string): NamedHeight | undefined {
  return (
    statedHeight(name) ??
    ipcHeight(name) ??
    axialHeight(name) ??
    discHeight(name) ??
    surfaceCan(name) ??
    tantalumHeight(name)
  );
}

const FIGURE = String.raw`(\d{1,3}(?:\.\d{1,2})?)`;
const STATED = new RegExp(`(?:[_-]H|\\dh)${FIGURE}(?:mm)?(?![\\d.a-z])`);

/** `CP_Radial_D8.0mm_H11.5mm`, `SW-SMD_4PIN-L12.0-W12.0-H6.0`, `CAPAE-4.3x4.3h5.4`. */
function statedHeight(name: string): NamedHeight | undefined {
  const match = STATED.exec(name);
  return match ? plausible(Number(match[1]), `height ${match[1]} mm`) : undefined;
}

const IPC_HEIGHT = /^(?:CAP|RES|IND|LED|DIO|FUSE?|TO|XTAL)[A-Z]*\d+W\d+(?:[DLT]\d+)*H(\d{3,4})/;
const IPC_LYING = /^(?:RES|DIO|IND|CAP)AD\d+W\d+L\d+D(\d{2,4})/;
const IPC_BOX =
  /^(?:(?:RES|CAP|IND|DIO|LED|FUS)[CM]|CAPAE|SO(?:IC|P|T|D|N)|[TM]?SSOP|[LT]?QFP|QFN|PLCC|DIP|TO|XTAL|OSC)\d{2,5}(?:P\d{2,5})?(?:X\d{2,5})?X(\d{2,5})(?:-\d+)?[A-Z]*$/;

/** Hundredths of a millimetre: the last figure of SOIC127P600X175-8N is the height. */
function ipcHeight(name: string): NamedHeight | undefined {
  const stated = IPC_HEIGHT.exec(name) ?? IPC_BOX.exec(name);
  if (stated) return plausible(Number(stated[1]) / 100, `height ${Number(stated[1]) / 100} mm`);
  const lying = IPC_LYING.exec(name);
  return lying
    ? plausible(Number(lying[1]) / 100, `diameter ${Number(lying[1]) / 100} mm`)
    : undefined;
}

const LENGTH = new RegExp(`_L${FIGURE}mm`);
const DIAMETER = new RegExp(`_D${FIGURE}mm`);
const WIDTH = new RegExp(`_W${FIGURE}mm`);

/** Parts with a lead at each end lie flat or stand on one of them. */
function axialHeight(name: string): NamedHeight | undefined {
  if (!/(?:^|_)(?:Axial|C\d\d-LF|AT310)/.test(name)) return undefined;
  const length = LENGTH.exec(name)?.[1];
  if (/_Vertical/.test(name)) {
    return length
      ? plausible(
          Number(length) + LEAD_ABOVE,
          `length ${length} mm, standing, and about 1 mm of lead,`,
        )
      : undefined;
  }
  const across = DIAMETER.exec(name)?.[1] ?? WIDTH.exec(name)?.[1];
  return across ? plausible(Number(across), `thickness ${across} mm, lying,`) : undefined;
}

function discHeight(name: string): NamedHeight | undefined {
  const across = /(?:^|_)Disc_/.test(name) ? DIAMETER.exec(name)?.[1] : undefined;
  if (!across) return undefined;
  return plausible(Number(across) + DISC_STAND, `diameter ${across} mm and about 1.5 mm of lead`);
}

/** `CP_Elec_6.3x5.3` is diameter by height. */
function surfaceCan(name: string): NamedHeight | undefined {
  const match = new RegExp(`^CP_Elec_${FIGURE}x${FIGURE}`).exec(name);
  return match ? plausible(Number(match[2]), `height ${match[2]} mm`) : undefined;
}

/** `CP_EIA-3216-18`: 3.2 × 1.6 mm, 1.8 mm high (EIA-535BAAC, from memory). */
function tantalumHeight(name: string): NamedHeight | undefined {
  const match = /EIA-\d{4}-(\d{2})(?!\d)/.exec(name);
  return match ? plausible(Number(match[1]) / 10, `height ${Number(match[1]) / 10} mm`) : undefined;
}

function plausible(mm: number, what: string): NamedHeight | undefined {
  return mm > 0 && mm <= 150 ? { mm: Math.round(mm * 100) / 100, what } : undefined;
}
