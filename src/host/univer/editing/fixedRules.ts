/** A correction of how checks and conditional formats follow rows and columns, formula plugin, version 0.25.1. */

import {
  AbsoluteRefType,
  DisposableCollection,
  getIntersectRange,
  type Injector,
  type IRange,
  IUniverInstanceService,
  moveRangeByOffset,
  Rectangle,
  type Workbook,
} from "@univerjs/core";
import {
  deserializeRangeWithSheetWithCache,
  ErrorType,
  FormulaRefRangeService,
  getSeparateEffectedRangesOnCommand,
  handleCommonDefaultRangeChangeWithEffectRefCommands,
  handleDefaultRangeChangeWithEffectRefCommands,
  LexerTreeBuilder,
  MoveRangeCommand,
  RefRangeService,
  ReorderRangeCommand,
  sequenceNodeType,
  serializeRangeToRefString,
} from "@univerjs/preset-sheets-core";
import { WHOLE } from "../file/areas";

type Command = Parameters<typeof getSeparateEffectedRangesOnCommand>[1];
type Follow = Parameters<RefRangeService["registerRefRange"]>[1];

interface Place {
  readonly unitId: string;
  readonly subUnitId: string;
}

type Corner = Pick<IRange, "startRow" | "startColumn">;

/** What of a formula means cells. */
interface Reference {
  readonly at: Place;
  readonly unitId: string;
  readonly sheetName: string;
  readonly range: IRange;
}

type Parts = readonly (string | Reference)[];

/** What a command does to the cells of a sheet. */
interface Change extends Place {
  readonly ranges: readonly IRange[];
  readonly command: Command;
}

/** Cells of which a rule has to hear, and which of the rule's own cells these concern. */
interface Watched {
  readonly at: Place;
  readonly range: IRange;
  readonly concerned: (hit: IRange) => IRange;
}

const TOP: Corner = { startRow: 0, startColumn: 0 };
const NOTHING = { undos: [], redos: [] };

// For Univer a reference with $ stays where it is, whatever happens to the cells that it means, and an area keeps its
// size. References follow here as they do in the formulas of cells.
FormulaRefRangeService.prototype.registerFormula = function (unitId, subUnitId, formula, callback) {
  const injector = injectorOf(this);
  const parts = partsOf(injector, { unitId, subUnitId }, formula);
  return heard(injector, referencesIn(parts), (command) => {
    const change = changeBy(injector, command);
    return change ? callback(textOf(followed(parts, change))) : NOTHING;
  });
};

FormulaRefRangeService.prototype.registerRangeFormula = function (unitId, subUnitId, ranges, formulas, callback) {
  const injector = injectorOf(this);
  const own = { unitId, subUnitId };
  const origin = ranges[0];
  if (!origin) return new DisposableCollection();
  const parsed = formulas.map((formula) => partsOf(injector, own, formula));
  const watched = ranges.flatMap((range) => [
    { at: own, range, concerned: (hit: IRange) => hit },
    ...parsed.flatMap(referencesIn).flatMap((reference) => corners(reference, range, origin)),
  ]);
  return heard(injector, watched, (command) => {
    const change = changeBy(injector, command);
    const hits = change ? watched.flatMap((one) => hitsOf(one, change)) : [];
    if (!change || hits.length === 0) return NOTHING;
    const pieces = Rectangle.splitIntoGrid(hits);
    const all = [...Rectangle.subtractMulti([...ranges], pieces), ...pieces];
    const rules = rulesAfter({ own, origin, parsed }, all, change).map((rule) => ({
      ranges: rule.ranges,
      formulas: rule.parsed.map((parts, i) => (parts.length > 0 ? textOf(parts) : (formulas[i] ?? ""))),
    }));
    return callback(rules);
  });
};

/** Formulas of a rule, for a cell of it. */
interface Rule {
  readonly own: Place;
  readonly origin: Corner;
  readonly parsed: readonly Parts[];
}

/** A rule parts where its cells come to mean something else, seen from each, than the others do. */
function rulesAfter({ own, origin, parsed }: Rule, pieces: readonly IRange[], change: Change) {
  const { command } = change;
  const isMoved = (range: IRange) => isOn(own, change) && change.ranges.some((one) => getIntersectRange(one, range));
  /** The formulas of a cell, for where it goes. */
  const cellAfter = ({ startRow, startColumn }: Corner) => {
    const cell = { startRow, startColumn, endRow: startRow, endColumn: startColumn };
    const at = (isMoved(cell) && handleDefaultRangeChangeWithEffectRefCommands(cell, command)) || cell;
    const moved = parsed.map((parts) => followed(shifted(parts, origin, cell), change));
    return { at, moved, meaning: JSON.stringify(moved.map((parts) => shifted(parts, at, TOP))) };
  };
  const alike = new Map<string, { at: Corner; moved: Parts[]; ranges: IRange[] }>();
  const take = (piece: IRange) => {
    const went = isMoved(piece) ? handleCommonDefaultRangeChangeWithEffectRefCommands(piece, command) : [piece];
    if (went.length === 0) return;
    const { at, moved, meaning } = cellAfter(piece);
    if (cellAfter({ startRow: piece.endRow, startColumn: piece.endColumn }).meaning !== meaning) {
      for (const half of halves(piece)) take(half);
      return;
    }
    const same = alike.get(meaning);
    if (same) same.ranges.push(...went);
    else alike.set(meaning, { at, moved, ranges: [...went] });
  };
  for (const piece of pieces) take(piece);
  return [...alike.values()].map(({ at, moved, ranges }) => {
    const merged = Rectangle.mergeRanges(ranges);
    merged.sort((a, b) => a.startRow - b.startRow || a.startColumn - b.startColumn);
    return { parsed: moved.map((parts) => shifted(parts, at, merged[0] ?? at)), ranges: merged };
  });
}

function halves(range: IRange): IRange[] {
  const { startRow, endRow, startColumn, endColumn } = range;
  const [row, column] = [Math.floor((startRow + endRow) / 2), Math.floor((startColumn + endColumn) / 2)];
  return row < endRow
    ? [
        { ...range, endRow: row },
        { ...range, startRow: row + 1 },
      ]
    : [
        { ...range, endColumn: column },
        { ...range, startColumn: column + 1 },
      ];
}

const injectorOf = (service: unknown) => (service as { readonly _injector: Injector })._injector;

const isOn = (one: Place, other: Place) => one.unitId === other.unitId && one.subUnitId === other.subUnitId;

function heard(injector: Injector, all: readonly Pick<Watched, "at" | "range">[], follow: Follow) {
  const service = injector.get(RefRangeService);
  const disposables = new DisposableCollection();
  for (const { at, range } of all) {
    disposables.add(service.registerRefRange(whole(range), follow, at.unitId, at.subUnitId));
  }
  return disposables;
}

/** Null for what goes from one sheet to another. */
function changeBy(injector: Injector, command: Command): Change | null {
  const { fromSubUnitId = null, toSubUnitId = fromSubUnitId } = (command.params ?? {}) as Record<string, unknown>;
  const effect = fromSubUnitId === toSubUnitId && getSeparateEffectedRangesOnCommand(injector, command);
  return effect ? { ...effect, command } : null;
}

/** Nothing where a text is no formula. References into what is not there are left as they are. */
function partsOf(injector: Injector, own: Place, formula: string): Parts {
  if (!formula?.startsWith("=")) return [];
  const nodes = injector.get(LexerTreeBuilder).sequenceNodesBuilder(formula) ?? [formula.slice(1)];
  return nodes.map((node) => {
    if (typeof node === "string") return node;
    if (node.nodeType !== sequenceNodeType.REFERENCE) return node.token;
    const { range, unitId, sheetName } = deserializeRangeWithSheetWithCache(node.token);
    const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId || own.unitId);
    const sheet = sheetName ? workbook?.getSheetBySheetName(sheetName) : workbook?.getSheetBySheetId(own.subUnitId);
    if (!sheet) return node.token;
    return { at: { unitId: sheet.getUnitId(), subUnitId: sheet.getSheetId() }, unitId, sheetName, range };
  });
}

const referencesIn = (parts: Parts): Reference[] => parts.filter((part) => typeof part !== "string");

const textOf = (parts: Parts) =>
  `=${parts.map((part) => (typeof part === "string" ? part : serializeRangeToRefString(part))).join("")}`;

/** A formula after a command. */
const followed = (parts: Parts, change: Change): Parts =>
  parts.map((part) => {
    if (typeof part === "string" || !isOn(part.at, change)) return part;
    // Sorting takes along what means the cells of its own row.
    if (change.command.id === ReorderRangeCommand.id && fixed(part.range.startAbsoluteRefType).row) return part;
    const moved = handleDefaultRangeChangeWithEffectRefCommands(part.range, change.command);
    // Cells onto which others were moved are still those.
    if (!moved) return change.command.id === MoveRangeCommand.id ? part : ErrorType.REF;
    const { startRow, endRow, startColumn, endColumn } = moved;
    return { ...part, range: { ...part.range, startRow, endRow, startColumn, endColumn } };
  });

/** A formula of one cell as it is for another. */
const shifted = (parts: Parts, from: Corner, to: Corner): Parts =>
  parts.map((part) => {
    if (typeof part === "string") return part;
    const range = moveRangeByOffset(part.range, to.startColumn - from.startColumn, to.startRow - from.startRow);
    return { ...part, range };
  });

const fixed = (type = AbsoluteRefType.NONE) => ({
  row: type === AbsoluteRefType.ROW || type === AbsoluteRefType.ALL,
  column: type === AbsoluteRefType.COLUMN || type === AbsoluteRefType.ALL,
});

/** Whole rows and columns in numbers. */
const whole = ({ startRow, endRow, startColumn, endColumn }: IRange): IRange => ({
  startRow: startRow || 0,
  startColumn: startColumn || 0,
  endRow: Number.isNaN(endRow) ? WHOLE.rows - 1 : endRow,
  endColumn: Number.isNaN(endColumn) ? WHOLE.columns - 1 : endColumn,
});

/** Where the two corners of a reference are for the cells of a rule's range. */
function corners({ at, range }: Reference, cells: IRange, origin: Corner): Watched[] {
  const { startRow, endRow, startColumn, endColumn } = whole(range);
  return [
    { row: startRow, column: startColumn, is: fixed(range.startAbsoluteRefType) },
    { row: endRow, column: endColumn, is: fixed(range.endAbsoluteRefType) },
  ].map(({ row, column, is }) => {
    const [down, right] = [row - origin.startRow, column - origin.startColumn];
    const rows = (of: IRange, by: number) => ({ startRow: of.startRow + by, endRow: of.endRow + by });
    const columns = (of: IRange, by: number) => ({ startColumn: of.startColumn + by, endColumn: of.endColumn + by });
    return {
      at,
      range: {
        ...(is.row ? { startRow: row, endRow: row } : rows(cells, down)),
        ...(is.column ? { startColumn: column, endColumn: column } : columns(cells, right)),
      },
      concerned: (hit) => ({
        ...(is.row ? rows(cells, 0) : rows(hit, -down)),
        ...(is.column ? columns(cells, 0) : columns(hit, -right)),
      }),
    };
  });
}

const hitsOf = ({ at, range, concerned }: Watched, change: Change): IRange[] =>
  isOn(at, change) ? change.ranges.flatMap((one) => getIntersectRange(one, range) ?? []).map(concerned) : [];
