/** Units in which the books print, in SI; exact by definition. */
export const inch = 0.0254;
export const millimetre = 1e-3;
export const poundForce = 4.4482216152605;
export const poundForcePerInch = poundForce / inch;
export const poundMass = 0.45359237;
export const kpsi = (1000 * poundForce) / inch ** 2;
export const Mpsi = 1000 * kpsi;
export const MPa = 1e6;
export const GPa = 1e9;
/** N/mm in N/m */
export const newtonPerMillimetre = 1000;
