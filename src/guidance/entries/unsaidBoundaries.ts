/** Sizes used where a source names fractions without saying where they end (ISO 14688-1, from memory). */
export const UNSAID = { clay: 0.002, silt: 0.063, sand: 2 } as const;
