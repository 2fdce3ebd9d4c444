/**
 * Takes the place of office.js in the task pane's frame: the same globals, handed over by the bench around it.
 * The functions are registered by the bench page already, so the frame's own registration has nothing to do.
 */
interface Bench {
  Excel: unknown;
  Office: unknown;
  OfficeExtension: unknown;
  CustomFunctions: object;
  gylebookBench: { listenForShortcuts(target: Window): void };
}

const bench = parent as unknown as Bench;
Object.assign(window, {
  Excel: bench.Excel,
  Office: bench.Office,
  OfficeExtension: bench.OfficeExtension,
  CustomFunctions: { ...bench.CustomFunctions, associate: () => undefined },
});
bench.gylebookBench.listenForShortcuts(window);
