/** Charge in capacitors: energy and discharge. Farad, volt, ohm, second, joule. */

/** Energy in J: C V² / 2. */
export function storedEnergy(farads: number, volts: number): number {
  return (farads * volts ** 2) / 2;
}

/** Time in s in which a resistor takes the capacitor from one voltage to another: R C ln(V1/V2). */
export function dischargeTime(farads: number, ohms: number, from: number, to: number): number {
  return from >= to && to > 0 ? ohms * farads * Math.log(from / to) : Number.NaN;
}

/** Voltage in V that is left after a time in s. */
export function voltageAfter(farads: number, ohms: number, from: number, seconds: number): number {
  return farads > 0 && ohms > 0 ? from * Math.exp(-seconds / (ohms * farads)) : Number.NaN;
}

/** The largest resistor in Ω that takes the capacitor from one voltage to another in a time. */
export function bleederResistor(farads: number, from: number, to: number, seconds: number): number {
  return farads > 0 && from > to && to > 0 ? seconds / (farads * Math.log(from / to)) : Number.NaN;
}
