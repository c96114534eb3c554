/**
 * 33 CFR 183.455(c)(1): under 50 V a fuse or breaker may have at most this share of the amps that
 * table 5 of 183.425 gives for the conductor it protects. From 50 V on the table's own amps count,
 * and this share only where no fuse of that size is made (c)(2).
 */
export const MOST_FUSE_SHARE = 1.5;
