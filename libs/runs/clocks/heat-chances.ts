/** An outcome of gel surer than this is taken for granted. Our own judgement. */
export const GEL_SURE = 0.75;
/** A chance of overheating from which on it is told as a risk. Our own judgement. */
export const MAY_OVERHEAT = 0.15;
