// @ts-check
import officeAddins from "eslint-plugin-office-addins";
import tseslint from "typescript-eslint";

/** Text of a workbook or a file is text on a page, and never code. */
const textIsText = [
  {
    selector:
      "MemberExpression[property.name=/^(innerHTML|outerHTML|insertAdjacentHTML|setHTMLUnsafe|createContextualFragment|srcdoc|writeln)$/]",
    message: "A page takes text as text: textContent, or an element.",
  },
  {
    selector: "JSXAttribute[name.name=/^(dangerouslySetInnerHTML|innerHTML|srcdoc)$/i]",
    message: "A page takes text as text: children.",
  },
  { selector: "Property[key.name='dangerouslySetInnerHTML']", message: "A page takes text as text: children." },
  {
    selector: "CallExpression[callee.object.name='document'][callee.property.name='write']",
    message: "A page takes text as text: textContent, or an element.",
  },
];

const waits = "Excel.run({ delayForCellEdit: true }, …): Excel refuses what comes while a cell is edited.";

export default tseslint.config(
  { ignores: ["dist/", "node_modules/", ".cache/", "coverage/"] },
  ...tseslint.configs.recommended,
  {
    // With types where a mistake would reach a brewer's cell.
    files: ["src/**/*.{ts,tsx}"],
    extends: [tseslint.configs.recommendedTypeCheckedOnly],
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      // A worksheet function's arguments are `unknown` by nature; a template of them is for messages only.
      "@typescript-eslint/restrict-template-expressions": ["error", { allowNumber: true, allowBoolean: true, allowNullish: true }],
      "@typescript-eslint/switch-exhaustiveness-check": ["error", { considerDefaultExhaustiveForUnions: true }],
      // An interface may promise a promise where one of its implementations has nothing to wait for.
      "@typescript-eslint/require-await": "off",
      // `any` needs a written reason where it comes in (no-explicit-any), not at each step that it takes afterwards.
      "@typescript-eslint/no-unsafe-argument": "off",
      "@typescript-eslint/no-unsafe-assignment": "off",
      "@typescript-eslint/no-unsafe-call": "off",
      "@typescript-eslint/no-unsafe-member-access": "off",
      "@typescript-eslint/no-unsafe-return": "off",
      // Our objects are closures more often than classes, and their methods may be taken apart. Other people's enums
      // are compared with what stands in files.
      "@typescript-eslint/unbound-method": "off",
      "@typescript-eslint/no-unsafe-enum-comparison": "off",
    },
  },
  {
    // A check that nobody waits for cannot fail.
    files: ["tests/**/*.{ts,tsx}"],
    languageOptions: { parserOptions: { projectService: true } },
    rules: { "@typescript-eslint/no-floating-promises": "error" },
  },
  {
    rules: {
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_", varsIgnorePattern: "^_" }],
      "@typescript-eslint/no-empty-object-type": ["error", { allowObjectTypes: "always" }],
      "@typescript-eslint/consistent-type-imports": "error",
      eqeqeq: ["error", "always", { null: "ignore" }],
    },
  },
  {
    // Text of a workbook or a file is text on a page, and never code: no markup from strings, nothing evaluated.
    files: ["src/**/*.{ts,tsx,mjs}"],
    rules: {
      "no-eval": "error",
      "no-new-func": "error",
      "no-script-url": "error",
      "no-restricted-syntax": ["error", ...textIsText],
    },
  },
  {
    // Where somebody may be typing in a cell, Excel refuses work that does not wait for the end of it.
    files: ["src/{addin,pane,workbook}/**/*.{ts,tsx}", "src/bench/page/**/*.{ts,tsx}"],
    rules: {
      "no-restricted-syntax": [
        "error",
        ...textIsText,
        {
          selector: "CallExpression[callee.object.name='Excel'][callee.property.name='run'][arguments.0.type!='ObjectExpression']",
          message: waits,
        },
        {
          selector:
            "CallExpression[callee.object.name='Excel'][callee.property.name='run'] > ObjectExpression:first-child:not(:has(Property[key.name='delayForCellEdit'][value.value=true]))",
          message: waits,
        },
      ],
    },
  },
  {
    // What Excel punishes at run time: reading before load and sync, a sync in a loop.
    files: ["src/workbook/**/*.ts", "src/pane/**/*.{ts,tsx}"],
    plugins: { "office-addins": officeAddins },
    rules: {
      "office-addins/call-sync-after-load": "error",
      "office-addins/call-sync-before-read": "error",
      "office-addins/load-object-before-read": "error",
      "office-addins/no-context-sync-in-loop": "error",
      "office-addins/no-empty-load": "error",
      "office-addins/no-navigational-load": "error",
      "office-addins/no-office-initialize": "error",
      "office-addins/test-for-null-using-isNullObject": "error",
    },
  },
  {
    // Excel's interface says `Function` itself where functions are registered.
    files: ["src/excel-stand-in/**/*.ts"],
    rules: { "@typescript-eslint/no-unsafe-function-type": "off" },
  },
  {
    // webpack takes its loaders as CommonJS.
    files: ["**/*.cjs"],
    rules: { "@typescript-eslint/no-require-imports": "off" },
  },
);
