/** Millimetres on the sheet that a ball one metre up is drawn above its shadow. */
export const liftPerMetre = 1.6;
