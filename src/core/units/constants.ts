/** The exact numbers behind every unit read or shown. */

/** International inch, m, exact. Source: NIST SP 811 (2008) B.8, "inch (in)", exact since 1959. */
export const metresPerInch = 0.0254;

/** International avoirdupois pound, kg, exact. Source: NIST SP 811 (2008) B.8, "pound (avoirdupois)". */
export const kilogramsPerPound = 0.45359237;

/** Standard acceleration of free fall, m/s², exact. Source: 3rd CGPM (1901); BIPM, The International System of Units. */
export const standardGravity = 9.80665;

/** International mile, m, exact: 5280 ft. Source: NIST SP 811 (2008) B.8. */
export const metresPerMile = 1609.344;
