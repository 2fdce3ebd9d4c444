/** Taking formulas apart. Draws in @borgar/fx: import it on demand, with the screen that needs it. */
export { separatorWords, withOurSeparators } from "./exchanged-separators";
export { gyleCalls, gyleId, withInner, type FormulaPart, type GyleCall } from "./gyle-calls";
export { replaceCalls } from "./replace-calls";
