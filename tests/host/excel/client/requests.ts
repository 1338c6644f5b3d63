/** What the client asks of Excel, done on the stand-in's workbook. */

import { rootOf } from "../kinds";
import { type Book, OfficeError } from "../model";
import { Remote, type Tree } from "../remote";

/** The body of a request, as far as it says what to do. */
export interface Request {
  readonly ObjectPaths: Readonly<Record<string, ObjectPath>>;
  readonly Actions: readonly Action[];
}

interface ObjectPath {
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: ArgumentInfo;
}

interface ArgumentInfo {
  readonly Arguments?: readonly unknown[];
  /** In the places of the arguments that are objects. */
  readonly ReferencedObjectPathIds?: readonly (number | null)[] | null;
}

export interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: ArgumentInfo;
  readonly QueryInfo?: { readonly Select?: readonly string[] };
}

/** What an action gave, by its id. */
export interface Result {
  readonly ActionId: number;
  readonly Value: unknown;
}

/** How an object is reached. */
const PATH = { root: 1, service: 2, method: 3, property: 4, member: 5, kept: 6, none: 7 } as const;
/** What is done. */
const ACTION = { reach: 1, query: 2, call: 3, set: 4, trace: 5 } as const;

/** A request failed at one of its actions. */
export class ActionFailed extends Error {
  constructor(
    readonly index: number,
    cause: unknown,
  ) {
    super(cause instanceof Error ? cause.message : String(cause), { cause });
  }
}

/** Does requests on a workbook, and keeps what they want kept for later ones. */
export class Requests {
  private readonly kept = new Map<string, Remote>();

  /** @param services what stands beside the workbook, by the names of its types */
  constructor(
    private readonly book: Book,
    private readonly services: Readonly<Record<string, object>>,
  ) {}

  /** Does the actions one by one, up to the share of them, and stops at one that fails: what came before stays done. */
  run({ Actions, ObjectPaths }: Request, share: number): Result[] {
    const objects = new Objects(ObjectPaths, this.kept, { "": rootOf(this.book), ...this.services });
    return Actions.slice(0, Math.floor(Actions.length * share)).map((action, index) => {
      try {
        return { ActionId: action.Id, Value: objects.do(action) ?? null };
      } catch (error) {
        throw new ActionFailed(index, error);
      }
    });
  }
}

/** Whether it only lets go of what was kept, which the client asks for on its own. */
export const isCleaning = ({ Actions }: Request): boolean =>
  Actions.some(isLetGo) && Actions.every((action) => action.ActionType === ACTION.reach || isLetGo(action));

const isLetGo = ({ Name }: Action): boolean => Name === "_RemoveReference";

/** The objects of one request, by the ids of their paths. */
class Objects {
  private readonly reached = new Map<number, Remote>();
  private readonly references = new Map<number, string>();

  constructor(
    private readonly paths: Request["ObjectPaths"],
    private readonly kept: Map<string, Remote>,
    private readonly roots: Readonly<Record<string, object>>,
  ) {}

  do(action: Action): unknown {
    if (action.ActionType === ACTION.trace || isLetGo(action)) return undefined;
    const { ObjectPathId: at, ArgumentInfo } = action;
    const object = this.at(at);
    switch (action.ActionType) {
      case ACTION.reach:
        return object.isNull() ? null : this.told(at, object);
      case ACTION.query:
        return object.read(treeOf(action.QueryInfo?.Select ?? []));
      case ACTION.call:
        return action.Name === "_KeepReference"
          ? this.keep(at)
          : object.call(camel(action.Name), this.args(ArgumentInfo));
      case ACTION.set:
        return object.write(camel(action.Name), this.args(ArgumentInfo)[0]);
      default:
        throw new Error(`The stand-in does not know actions of type ${action.ActionType}.`);
    }
  }

  /** What an object is found by in later requests. */
  private told(at: number, object: Remote): object {
    const reference = this.references.get(at);
    return Object.fromEntries([...object.id(), ...(reference ? [["_ReferenceId", reference]] : [])]);
  }

  private keep(at: number): void {
    const object = this.at(at).pinned();
    const reference = `kept ${this.kept.size}`;
    this.kept.set(reference, object);
    this.reached.set(at, object);
    this.references.set(at, reference);
  }

  private at(id: number): Remote {
    const object = this.reached.get(id) ?? this.find(this.paths[id] as ObjectPath);
    this.reached.set(id, object);
    return object;
  }

  private find({ ObjectPathType: type, Name, ParentObjectPathId: parent, ArgumentInfo }: ObjectPath): Remote {
    if (type === PATH.none) return NOTHING;
    if (type === PATH.root || type === PATH.service) {
      const root = this.roots[Name];
      if (!root) throw new Error(`The stand-in has no service ${Name}.`);
      return root as Remote;
    }
    if (type === PATH.kept) {
      const object = this.kept.get(Name);
      if (!object) throw new OfficeError("InvalidReference");
      return object;
    }
    const from = this.at(parent as number);
    if (type === PATH.property) return from.reach(camel(Name));
    const found = from.call(type === PATH.method ? camel(Name) : "getItem", this.args(ArgumentInfo));
    if (!(found instanceof Remote)) throw new Error(`The stand-in gives no object for ${Name}.`);
    return found;
  }

  /** Arguments; those at the end that were not given are left out. */
  private args({ Arguments = [], ReferencedObjectPathIds }: ArgumentInfo = {}): unknown[] {
    const args = Arguments.map((value, i) => {
      const object = ReferencedObjectPathIds?.[i];
      return object ? this.at(object) : value;
    });
    while (args.length > 0 && args.at(-1) === null) args.pop();
    return args;
  }
}

const NOTHING = new Remote({}, () => null, true);

/** A name as the client's callers have it. */
const camel = (name: string): string => (name.startsWith("_") ? name : name.charAt(0).toLowerCase() + name.slice(1));

function treeOf(paths: readonly string[]): Tree {
  const tree: Tree = {};
  for (const path of paths) {
    let at = tree;
    for (const step of path.split("/")) {
      at[step] ??= {};
      at = at[step];
    }
  }
  return tree;
}
