/*
 * webpack loader and plugin for the grid's published code.
 *
 * 1. Univer ships class fields through a slow `_defineProperty` helper; plain assignment does the same for its classes
 *    and makes loading and recalculation about a third faster.
 * 2. Its drawing engine imports some 70 hyphenation dictionaries (4.7 MB) that a spreadsheet never uses.
 * 3. Its formula engine does not know references to a table with an underscore in its name (Malts_2[Mass]); Excel does.
 * 4. It keeps 5,000 formulas taken apart, some fifteen batch sheets; with one more sheet none is found there again.
 * 5. It keeps them under a number of 32 bits made from their text: two of many thousand may share one, and the second
 *    cell would be calculated by the first one's formula.
 * 6. For every formula it asks for every changed name whether the formula reads it, in place of asking the few it reads.
 * 7. It measures rows and looks through choices of cells while the page is idle, also those of a sheet or workbook that is gone
 *    since, which throws on the page.
 * 8. It rewrites a formula that was typed, number by number, and then puts its texts back from where they stood before: after
 *    1.050 became 1.05, "SG" became ""S. Here what was typed is what stands in the cell.
 * 9. While its list of functions is open, Enter takes the first of them: =FALSE became =FALSE( or another function, and the cell
 *    stayed open. As in Excel, Enter now means what was typed, and Tab takes from the list.
 * 10. A formula that its parser stumbles over stops the calculation of all others for good. Here it is #NAME?.
 * 11. It lets the page answer after every 500 formulas, however long those take; now after every twentieth of a second.
 * 12. Nothing ends a function that goes round a loop a billion times. Each turn of a loop is counted, so that
 *     stop-runaways.ts can end it.
 * 13. SEQUENCE and RANDARRAY refuse what is larger than the room below them, also inside SUM.
 * 14. A reference to a cell beyond the grid's last row or column is #NAME?; Excel has more rows than the grid shows, and they are blank.
 * 15. An empty text that a formula gives is a blank cell to others in the calculation that makes it, and a text in the next one.
 * 16. It knows no row of totals: Table[#All] ended before it, Table[#Totals] was the last row of the data.
 * 17. It looks for texts with wildcards by a regular expression, and one with some twenty * never ends: wildcards.ts is asked.
 * 18. It takes a list behind an operator (2*{1,2}) for a slip, unless the expression begins with a sign, a bracket or a list: it asks
 *     what stands first, where it matters what stands just before.
 * 19. It measures the height of rows by every cell of every column, also where nothing stands.
 * 20. It works out what a number shows each time it is drawn on another sheet, since it keeps that by row and column alone.
 *
 * All are text replacements in someone else's code, so the build must fail when they no longer match. Wire it so:
 *
 *   const fastProperties = require("./src/excel-stand-in/engine/fast-properties-loader.cjs");
 *   module: { rules: [fastProperties.rule] },
 *   plugins: [new fastProperties.CheckPlugin()],          // in every configuration that has the rule
 *
 * Pass `new CheckPlugin({ hyphenation: false })` for the headless bundle, which has no drawing engine.
 * With webpack's persistent cache the loader may not run at all; the check then has nothing to count and passes.
 */
const HELPER = /function (_defineProperty\w*)\(([\w$]+), ([\w$]+), ([\w$]+)\) \{[\s\S]*?\n\}/g;
const HYPHENATION = /import\("\.\/[a-z0-9-]+-[\w-]{8}\.js"\)/g;
const FILES = /[\\/]@univerjs[\\/][^\\/]+[\\/]lib[\\/]es[\\/].*\.js$/;
const LOCALE = /[\\/]locales?[\\/]/;
const DRAWING_ENGINE = /engine-render[\\/]lib[\\/]es[\\/]index\.js$/;

const FORMULA_ENGINE = /engine-formula[\\/]lib[\\/]es[\\/]index\.js$/;
const GRID_UI = /@univerjs[\\/]sheets-ui[\\/]lib[\\/]es[\\/]index\.js$/;
const GRID_FORMULAS = /@univerjs[\\/]sheets-formula-ui[\\/]lib[\\/]es[\\/]index\.js$/;
const GRID_CHOICES = /@univerjs[\\/]sheets-data-validation[\\/]lib[\\/]es[\\/]index\.js$/;
const GRID_NUMBERS = /@univerjs[\\/]sheets-numfmt[\\/]lib[\\/]es[\\/]index\.js$/;
const FORBIDDEN_IN_TABLE_NAMES = 'const TABLE_NAME_REGEX = "((?![~!@#$%^&*()_+<>';

/** What is replaced in one file, each just once, with the words of the complaint where it is not found. */
const ROOM = [
  [
    "the room for SEQUENCE has changed",
    "		const maxRows = this._rowCount - this.row;\n		const maxColumns = this._columnCount - this.column;\n",
    "		const maxRows = 1048576;\n		const maxColumns = 16384;\n",
  ],
];
const FORMULA_REPAIRS = [
  [
    "the check of what stands before a list has changed",
    `		if (this._currentLexerNode.getChildren().length === 0) return true;
		const node = this._currentLexerNode.getChildren()[0];
`,
    `		if (this._currentLexerNode.getChildren().length === 0) return true;
		const node = this._currentLexerNode.getChildren().at(-1);
`,
  ],
  [
    "the rows of a table have changed",
    `				startRow = tableStartRow;
				endRow = tableEndRow;
				break;
			case "#Data":`,
    `				startRow = tableStartRow;
				endRow = tableEndRow + (this._tableData.hasTotals?.() ? 1 : 0);
				break;
			case "#Data":`,
  ],
  [
    "the rows of a table have changed",
    `			case "#Totals":
				startRow = tableEndRow;
				endRow = tableEndRow;`,
    `			case "#Totals":
				startRow = this._tableData.hasTotals?.() ? tableEndRow + 1 : -1;
				endRow = startRow;`,
  ],
  [
    "the look for wildcards has changed",
    `	const pattern = escapeRegExpForWildcard(value).replace(/~?[*?]/g, (match) => {
		if (match.startsWith("~")) return \`\\\\\${match.substring(1)}\`;
		if (match === "*") return ".*";
		if (match === "?") return ".";
		return match;
	});
	return new RegExp(\`^\${pattern}$\`).test(currentValue);
`,
    '	return globalThis[Symbol.for("wildcards of formulas")](currentValue, value);\n',
  ],
  [
    "the look for blank cells has changed",
    "			if (isNullCell(cell)) {\n				result = callback(null, r, c);",
    '			if (isNullCell(cell) && !(cell && cell.v === "" && cell.t === CellValueType.STRING)) {\n				result = callback(null, r, c);',
  ],
  [
    "the check of references against the grid's size has changed",
    'if (!this._isPrepareMerge && referenceObject.isExceedRange()) this.setValue(ErrorValueObject.create("#NAME?"));',
    'if (!this._isPrepareMerge && referenceObject.isNowhere()) this.setValue(ErrorValueObject.create("#REF!"));',
  ],
  ...[1, 2].map(() => [
    "the check of references against the grid's size has changed",
    "	isExceedRange() {\n",
    "	isNowhere() {\n		const { startRow, startColumn } = this.getRangePosition();\n		return startRow < 0 || startColumn < 0;\n	}\n	isExceedRange()  {\n",
  ]),
  ...ROOM,
  ...ROOM,
  ["the rule for table names has changed", FORBIDDEN_IN_TABLE_NAMES, FORBIDDEN_IN_TABLE_NAMES.replace("_+", "+")],
  ["the number of formulas kept has changed", "const FORMULA_CACHE_LRU_COUNT = 5e3;", "const FORMULA_CACHE_LRU_COUNT = 5e5;"],
  ["what formulas are kept under has changed", "if (formulaString.length <= 64) return formulaString;", "return formulaString;"],
  [
    "the search for changed names has changed",
    `	const definedNameMap = currentConfigService.getDirtyDefinedNameMap();
	const executeUnitId = currentConfigService.getExecuteUnitId();
	if (executeUnitId != null && definedNameMap[executeUnitId] != null) {
		const names = Object.keys(definedNameMap[executeUnitId]);
		for (let i = 0, len = names.length; i < len; i++) {
			const name = names[i];
			if (node.hasDefinedName(name)) return true;
		}
	}
	return false;
`,
    `	const changed = currentConfigService.getDirtyDefinedNameMap()[currentConfigService.getExecuteUnitId()];
	return changed != null && (node.getDefinedNames() || []).some((name) => Object.hasOwn(changed, name));
`,
  ],
  [
    "the reading of formulas has changed",
    `	const lexerNode = lexer.treeBuilder(formulaString);
	if (ERROR_TYPE_SET.has(lexerNode)) return ErrorNode.create(lexerNode);
	astNode = astTreeBuilder.parse(lexerNode);
`,
    `	let lexerNode;
	try {
		lexerNode = lexer.treeBuilder(formulaString);
		if (ERROR_TYPE_SET.has(lexerNode)) return ErrorNode.create(lexerNode);
		astNode = astTreeBuilder.parse(lexerNode);
		if (isTooDeep(astNode)) return ErrorNode.create("#NAME?");
	} catch {
		return ErrorNode.create("#NAME?");
	}
`,
  ],
  ["the pauses of a calculation have changed", "			if (i % intervalCount === 0) {", "			if (i === 0 || performance.now() - pausedAt > 50) {"],
  [
    "the pauses of a calculation have changed",
    "				await new Promise((resolve) => {\n					const calCancelTask = requestImmediateMacroTask(resolve);\n					pendingTasks.push(calCancelTask);\n				});\n",
    "				await new Promise((resolve) => {\n					const calCancelTask = requestImmediateMacroTask(resolve);\n					pendingTasks.push(calCancelTask);\n				});\n				pausedAt = performance.now();\n",
  ],
  ["the pauses of a calculation have changed", "		let i = 0;\n		const treeCount", "		let i = 0;\n		let pausedAt = 0;\n		const treeCount"],
];
const GRID_UI_REPAIRS = [
  [
    "what becomes of a formula that was typed has changed",
    '	if (normalStr.startsWith("=")) return normalizeFormulaString(str, normalStr, lexerTreeBuilder, functionService);\n',
    '	if (normalStr.startsWith("=")) return normalStr;\n',
  ],
  [
    "the idle measuring of rows has changed",
    "	_loopTask(task) {\n		const skeleton = task.skeleton;\n",
    "	_loopTask(task) {\n		const skeleton = task.skeleton;\n		if (skeleton._worksheetData === null) return;\n",
  ],
];
const IDLE_LOOK = "					else requestIdleCallback(() => {\n						";
const GRID_CHOICES_REPAIRS = [
  [
    "the idle look through cells with choices has changed",
    `${IDLE_LOOK}this.validatorRanges(unitId, subUnitId, ranges);`,
    `${IDLE_LOOK}if (this._univerInstanceService.getUnit(unitId)?.getSheetBySheetId(subUnitId)) this.validatorRanges(unitId, subUnitId, ranges);`,
  ],
];
const GRID_FORMULAS_REPAIRS = [
  [
    "the keys of the list of functions have changed",
    "			KeyCode.ENTER,\n			KeyCode.ESC,\n			KeyCode.TAB\n		].map(",
    "			KeyCode.ESC,\n			KeyCode.TAB\n		].map(",
  ],
];
const DRAWING_REPAIRS = [
  [
    "the measuring of rows by their cells has changed",
    "			const cellHeight = this.calculateAutoHeightForCell(rowNum, i);\n",
    "			if (this.worksheet.getCellRaw(rowNum, i) == null) continue;\n			const cellHeight = this.calculateAutoHeightForCell(rowNum, i);\n",
  ],
];
const GRID_NUMBERS_REPAIRS = [
  [
    "what is done to show a number has changed",
    "				const info = getPatternPreviewIgnoreGeneral(numfmtValue === null || numfmtValue === void 0 ? void 0 : numfmtValue.pattern, Number(originCellValue.v), this.locale);\n",
    `				const shown = (this._shown ??= new Map());
				const shownKey = \`\${this.locale} \${originCellValue.v} \${numfmtValue?.pattern}\`;
				if (!shown.has(shownKey)) {
					if (shown.size > 2e4) shown.clear();
					shown.set(shownKey, getPatternPreviewIgnoreGeneral(numfmtValue?.pattern, Number(originCellValue.v), this.locale));
				}
				const info = shown.get(shownKey);
`,
  ],
];
const REPAIRS = [
  [DRAWING_ENGINE, DRAWING_REPAIRS],
  [GRID_NUMBERS, GRID_NUMBERS_REPAIRS],
  [FORMULA_ENGINE, FORMULA_REPAIRS],
  [GRID_UI, GRID_UI_REPAIRS],
  [GRID_FORMULAS, GRID_FORMULAS_REPAIRS],
  [GRID_CHOICES, GRID_CHOICES_REPAIRS],
];

/**
 * Excel takes formulas of 8,192 characters, and 64 functions in one another. A sum of 2,700 terms is as deep as the engine's way of
 * going through it can be; what is deeper would end the stack in one of a dozen places.
 */
const DEPTH = `
function isTooDeep(node) {
	const open = node ? [[node, 1]] : [];
	for (let next = open.pop(); next; next = open.pop()) {
		if (next[1] > 3e3) return true;
		for (const child of next[0].getChildren()) open.push([child, next[1] + 1]);
	}
	return false;
}
`;

/** Counts the turns of every loop in the formula engine, and asks the watch, if there is one, every so often. In one bundle it is called before its line is reached. */
const TURN = `
var turnsOfLoops;
function turnOfLoop() {
	if (((turnsOfLoops = (turnsOfLoops | 0) + 1) & 16383) === 0) globalThis[Symbol.for("watch over formula loops")]?.();
	return true;
}
`;
const COUNTED_LOOP = /\bfor \(([^;\n]*); ([^;\n]+); (?=[^\n]*\))/g;

function countTurns(source) {
  const loops = source.replace(COUNTED_LOOP, (_whole, first, condition) => {
    counts.loops++;
    return `for (${first}; turnOfLoop() && (${condition}); `;
  });
  let result = "";
  let from = 0;
  for (const { index, 0: head } of loops.matchAll(/\bwhile \(/g)) {
    const open = index + head.length;
    const close = closingBracket(loops, open);
    if (close < 0) continue;
    counts.loops++;
    result += `${loops.slice(from, open)}turnOfLoop() && (${loops.slice(open, close)})`;
    from = close;
  }
  return result + loops.slice(from) + TURN + DEPTH;
}

/** Where the bracket closes that was opened just before `from`; -1 if not on this line. */
function closingBracket(source, from) {
  let depth = 1;
  for (let at = from; at < source.length && source[at] !== "\n"; at++) {
    if (source[at] === "(") depth++;
    else if (source[at] === ")" && --depth === 0) return at;
  }
  return -1;
}

const counts = { files: 0, helpers: 0, drawingFiles: 0, dictionaries: 0, loops: 0 };
const missing = new Set();

/** The replacements alone, for other bundlers. */
function rewrite(source, path) {
  // Lists of words have no helper: one of them alone, in a build that knows the rest from before, is no sign of trouble.
  if (!LOCALE.test(path)) counts.files++;
  let result = source.replace(HELPER, (_whole, name, object, key, value) => {
    counts.helpers++;
    return `function ${name}(${object}, ${key}, ${value}) { ${object}[${key}] = ${value}; return ${object}; }`;
  });
  for (const [complaint, before, after] of REPAIRS.flatMap(([file, repairs]) => (file.test(path) ? repairs : []))) {
    if (!result.includes(before)) missing.add(complaint);
    result = result.replace(before, () => after);
  }
  if (FORMULA_ENGINE.test(path)) result = countTurns(result);
  if (DRAWING_ENGINE.test(path)) {
    counts.drawingFiles++;
    result = result.replace(HYPHENATION, () => {
      counts.dictionaries++;
      return "Promise.resolve({ default: [] })";
    });
  }
  return result;
}

/** What is wrong with the counts so far, or undefined. */
function complaint({ hyphenation = true } = {}) {
  if (counts.files > 0 && counts.helpers === 0) return "fast-properties: no _defineProperty helper found in @univerjs.";
  if (hyphenation && counts.drawingFiles > 0 && counts.dictionaries === 0) return "fast-properties: no hyphenation imports found.";
  if (counts.loops > 0 && counts.loops < 400) return "fast-properties: hardly a loop found in the formula engine.";
  if (missing.size > 0) return `fast-properties: ${[...missing].join("; ")}.`;
  return undefined;
}

module.exports = function fastPropertiesLoader(source) {
  return rewrite(source, this.resourcePath);
};

module.exports.rule = { test: FILES, use: [{ loader: __filename }] };
module.exports.FILES = FILES;
module.exports.rewrite = rewrite;
module.exports.complaint = complaint;

module.exports.CheckPlugin = class CheckPlugin {
  constructor(options) {
    this.options = options;
  }

  apply(compiler) {
    compiler.hooks.thisCompilation.tap("FastPropertiesCheck", (compilation) => {
      compilation.hooks.finishModules.tap("FastPropertiesCheck", () => {
        const problem = complaint(this.options);
        if (problem) compilation.errors.push(new Error(problem));
      });
    });
  }
};
