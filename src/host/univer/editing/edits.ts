/** What users did, seen as it goes onto the list of what can be taken back. */

import {
  type DependencyOverride,
  type ICellData,
  ICommandService,
  IContextService,
  type IMutationInfo,
  type Injector,
  type IUndoRedoItem,
  IUndoRedoService,
  IUniverInstanceService,
  LocalUndoRedoService,
  sequenceExecute,
} from "@univerjs/core";
import { type ISetRangeValuesMutationParams, SetRangeValuesMutation } from "@univerjs/preset-sheets-core";

/** One step of what can be taken back. */
export interface Edit {
  readonly unitID: string;
  readonly undoMutations: readonly IMutationInfo[];
  readonly redoMutations: readonly IMutationInfo[];
  readonly id?: string;
}

/** What follows from an edit, and what takes it back. */
export interface Consequence {
  readonly redos: readonly IMutationInfo[];
  readonly undos: readonly IMutationInfo[];
}

/** Consequences as one, in their order; null where nothing follows. */
export function joined(...all: readonly (Consequence | null)[]): Consequence | null {
  const some = all.filter((one) => one !== null && one.redos.length > 0) as Consequence[];
  if (some.length === 0) return null;
  return { redos: some.flatMap(({ redos }) => redos), undos: some.reverse().flatMap(({ undos }) => undos) };
}

/** Marks what the pane writes: nothing follows from that by itself. */
export const BY_PANE = "pourwright.pane";

interface Follower {
  /** Asked after each edit, when its cells are changed already. */
  readonly consequence: (edit: Edit) => Consequence | null;
  /** Told of the step that went onto the list. */
  readonly done: (edit: Edit) => void;
  /** Told when what should follow from an edit could not be done. */
  readonly failed: () => void;
}

/** The list of what can be taken back; something may follow from an edit in the same step, so that one press takes back both. */
export class Steps extends LocalUndoRedoService {
  #follower: Follower | null = null;
  readonly #commands: ICommandService;

  constructor(instances: IUniverInstanceService, commands: ICommandService, context: IContextService) {
    super(instances, commands, context);
    this.#commands = commands;
  }

  follow(follower: Follower): void {
    this.#follower = follower;
  }

  override pushUndoRedo(item: IUndoRedoItem): void {
    const more = this.#follow(item);
    const whole = more
      ? {
          ...item,
          redoMutations: [...item.redoMutations, ...more.redos],
          undoMutations: [...more.undos, ...item.undoMutations],
        }
      : item;
    super.pushUndoRedo(whole);
    this.#follower?.done(whole);
  }

  /** Does what follows from an edit. Whatever fails in it, the edit itself is there and must reach the list. */
  #follow(item: IUndoRedoItem): Consequence | null {
    if (item.id === BY_PANE || !this.#follower) return null;
    try {
      const more = this.#follower.consequence(item);
      if (!more || sequenceExecute([...more.redos], this.#commands).result) return more;
    } catch {
      // Said below, as where a step of it was refused.
    }
    this.#follower.failed();
    return null;
  }
}

/** Has Univer keep its steps in this list. */
export const STEPS: DependencyOverride = [
  [
    IUndoRedoService,
    {
      useFactory: (...parts: ConstructorParameters<typeof Steps>) => new Steps(...parts),
      deps: [IUniverInstanceService, ICommandService, IContextService],
    },
  ],
];

/** Has the removal of a sheet be a step however many cells it has: of one with 6,000 Univer would empty the list. */
export const WHOLE_SHEETS = { largeSheetOperation: { largeSheetCellCountThreshold: Number.POSITIVE_INFINITY } };

/** Lets something follow from edits. */
export function followEdits(
  injector: Injector,
  consequence: Follower["consequence"],
  done: Follower["done"] = () => undefined,
  failed: Follower["failed"] = () => undefined,
): void {
  (injector.get(IUndoRedoService) as Steps).follow({ consequence, done, failed });
}

type CellRows = Readonly<Record<number, Readonly<Record<number, ICellData | null>>>>;

/** What mutations write into the cells of a sheet, the later over the earlier. */
export function cellsOf(mutations: readonly IMutationInfo[], sheetId: string): Map<number, Map<number, ICellData>> {
  const cells = new Map<number, Map<number, ICellData>>();
  for (const { id, params } of mutations) {
    const { subUnitId, cellValue } = params as ISetRangeValuesMutationParams;
    if (id !== SetRangeValuesMutation.id || subUnitId !== sheetId) continue;
    for (const [row, columns] of Object.entries((cellValue ?? {}) as CellRows)) {
      const line = cells.get(Number(row)) ?? new Map<number, ICellData>();
      cells.set(Number(row), line);
      for (const [column, cell] of Object.entries(columns)) {
        line.set(Number(column), { ...line.get(Number(column)), ...cell });
      }
    }
  }
  return cells;
}

/** The sheets, by their ids, into whose cells an edit writes. */
export const sheetsOf = ({ redoMutations }: Edit): string[] => [
  ...new Set(
    redoMutations
      .filter(({ id }) => id === SetRangeValuesMutation.id)
      .map(({ params }) => (params as ISetRangeValuesMutationParams).subUnitId),
  ),
];

/** Whether a cell as it was written holds anything. */
export const isFilled = (cell: ICellData | null | undefined): boolean =>
  Boolean(cell && (cell.f || cell.si || cell.p?.body || (cell.v !== null && cell.v !== undefined && cell.v !== "")));
