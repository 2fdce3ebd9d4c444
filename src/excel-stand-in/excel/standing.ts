type Plain = string | number | boolean | undefined | null | readonly (string | number | boolean | readonly unknown[])[];

/**
 * What a stand-in class offers of one of Excel's classes, checked by the compiler: plain properties have Excel's exact type, methods
 * take Excel's arguments, and properties that are objects exist (they stand in themselves). `Own` is the stand-in's
 * `keyof`; load() is every object's alike.
 */
export type StandsFor<Original, Own> = {
  [Member in Exclude<keyof Original & Own, "load">]: Original[Member] extends (...args: infer Arguments) => unknown
    ? (...args: Arguments) => unknown
    : Original[Member] extends Plain
      ? Original[Member]
      : Original[Member] extends readonly unknown[]
        ? readonly object[]
        : object;
};
