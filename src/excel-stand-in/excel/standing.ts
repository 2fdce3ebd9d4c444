type Plain = string | number | boolean | undefined | null | readonly (string | number | boolean | readonly unknown[])[];

/**
 * The members of one of Excel's classes that a stand-in class provides, checked by the compiler: plain properties have
 * Excel's exact type, methods take Excel's arguments, and properties that are objects exist (they stand in themselves).
 */
export type StandsFor<Original, Members extends keyof Original> = {
  [Member in Members]: Original[Member] extends (...args: infer Arguments) => unknown
    ? (...args: Arguments) => unknown
    : Original[Member] extends Plain
      ? Original[Member]
      : Original[Member] extends readonly unknown[]
        ? readonly object[]
        : object;
};
