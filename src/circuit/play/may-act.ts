/**
 * Share of system voltage from which a coil, a valve or a motor may already act, and a lamp is seen
 * to burn (our own, cautious).
 */
export const MAY_ACT = 0.3;
