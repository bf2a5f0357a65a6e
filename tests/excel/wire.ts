/**
 * The language that Microsoft's office.js speaks to Excel: a request names objects by paths (a property, method or item of
 * another object) and lists actions on them in order. Written down from what office.js 1.1.110 sends.
 */
export interface Request {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, ObjectPath>>;
}

export interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: ArgumentInfo;
  readonly QueryInfo?: { readonly Select?: readonly string[] };
}

interface ArgumentInfo {
  readonly Arguments?: readonly unknown[];
  /** For each argument the path it stands for, or null where it is a plain value. */
  readonly ReferencedObjectPathIds?: readonly (number | null)[];
}

interface ObjectPath {
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: ArgumentInfo;
}

export interface Answer {
  readonly Results: readonly { readonly ActionId: number; readonly Value: unknown }[];
  readonly Error?: { readonly Code: string; readonly Message: string; readonly ActionIndex: number };
}

/** An object of the workbook as the wire sees it; names begin with a small letter. */
export interface Thing {
  readonly read?: Readonly<Record<string, () => unknown>>;
  readonly write?: Readonly<Record<string, (value: never) => void>>;
  /** Properties that are objects themselves. */
  readonly parts?: Readonly<Record<string, () => Thing>>;
  /** Methods; those that give an object give null for a null object. */
  readonly calls?: Readonly<Record<string, (...args: never[]) => Thing | null | void>>;
  /** The object that an index finds. */
  readonly item?: (key: never) => Thing;
  readonly items?: () => readonly Thing[];
  readonly id?: string;
  /** Excel keeps hold of it between requests. */
  readonly kept?: true;
  /** Takes whatever is set on it. */
  readonly anything?: (name: string) => Thing;
  readonly note?: (name: string, value: unknown) => void;
  readonly done?: (name: string, args: readonly unknown[]) => void;
}

export class ExcelError extends Error {
  constructor(readonly code: string) {
    super(`Excel refused: ${code}`);
  }
}

const small = (name: string) => name.charAt(0).toLowerCase() + name.slice(1);
const large = (name: string) => name.charAt(0).toUpperCase() + name.slice(1);

const [INSTANTIATE, QUERY, METHOD, SET] = [1, 2, 3, 4];
const [ROOT, METHOD_PATH, PROPERTY_PATH, ITEM_PATH, REFERENCE_PATH, NULL_PATH] = [1, 3, 4, 5, 6, 7];

/** Carries out requests on a workbook. */
export class Server {
  readonly #kept = new Map<string, Thing>();

  constructor(private readonly root: () => Thing) {}

  /** Does the actions one after another; the first that fails ends it. `before` is called ahead of each. */
  answer(request: Request, before: (at: number) => void): Answer {
    const known = new Map<number, Thing | null>();
    const results: { ActionId: number; Value: unknown }[] = [];
    for (const [at, action] of request.Actions.entries()) {
      try {
        before(at);
        results.push({ ActionId: action.Id, Value: this.#act(request, action, known) });
      } catch (thrown) {
        const Code = thrown instanceof ExcelError ? thrown.code : 'GeneralException';
        const Message = thrown instanceof Error ? thrown.message : String(thrown);
        return { Results: results, Error: { Code, Message, ActionIndex: at } };
      }
    }
    return { Results: results };
  }

  #act(request: Request, action: Action, known: Map<number, Thing | null>): unknown {
    const thing = this.#find(request, action.ObjectPathId, known);
    const name = small(action.Name);
    switch (action.ActionType) {
      case INSTANTIATE: {
        if (thing === null) return null;
        if (thing.id !== undefined) return { _Id: thing.id };
        if (thing.kept === undefined) return {};
        const id = `reference${this.#kept.size}`;
        this.#kept.set(id, thing);
        return { _ReferenceId: id };
      }
      case QUERY:
        return thing === null ? null : query(thing, action.QueryInfo?.Select ?? []);
      case METHOD: {
        if (name === '_KeepReference' || name === '_RemoveReference' || thing === null) return null;
        const made = this.#call(request, thing, name, action.ArgumentInfo, known);
        return made === undefined ? null : made;
      }
      case SET: {
        if (thing === null) throw new ExcelError('InvalidObjectPath');
        const [value] = this.#arguments(request, action.ArgumentInfo, known);
        if (thing.note) thing.note(name, value);
        else required(thing.write?.[name], `property ${name} to set`)(value as never);
        return null;
      }
      default:
        throw new Error(`the fake knows no action of type ${action.ActionType}`);
    }
  }

  #find(request: Request, id: number, known: Map<number, Thing | null>): Thing | null {
    if (!known.has(id)) known.set(id, this.#resolve(request, required(request.ObjectPaths[id], `path ${id}`), known));
    return known.get(id)!;
  }

  #resolve(request: Request, path: ObjectPath, known: Map<number, Thing | null>): Thing | null {
    const { ObjectPathType: type, ParentObjectPathId, Name, ArgumentInfo } = path;
    if (type === ROOT) return this.root();
    if (type === REFERENCE_PATH) return required(this.#kept.get(Name), `reference ${Name}`);
    if (type === NULL_PATH) return null;
    const parent = this.#find(request, ParentObjectPathId!, known);
    if (parent === null) return null; // what belongs to a null object is one
    const name = small(Name);
    if (parent.anything && type !== METHOD_PATH) {
      return parent.anything(type === ITEM_PATH ? String(ArgumentInfo!.Arguments![0]) : name);
    }
    if (type === PROPERTY_PATH) return required(parent.parts?.[name], `part ${name}`)();
    if (type === ITEM_PATH) return required(parent.item, 'item')(ArgumentInfo!.Arguments![0] as never);
    if (type !== METHOD_PATH) throw new Error(`the fake knows no path of type ${type}`);
    return this.#call(request, parent, name, ArgumentInfo, known) ?? null;
  }

  #call(
    request: Request,
    thing: Thing,
    name: string,
    args: ArgumentInfo | undefined,
    known: Map<number, Thing | null>,
  ) {
    if (thing.anything) {
      thing.done?.(name, args?.Arguments ?? []);
      return thing.anything(name);
    }
    return required(thing.calls?.[name], `method ${name}`)(...(this.#arguments(request, args, known) as never[]));
  }

  /** Plain values as they are, objects as the things they name. */
  #arguments(request: Request, args: ArgumentInfo | undefined, known: Map<number, Thing | null>): unknown[] {
    const paths = args?.ReferencedObjectPathIds;
    return (args?.Arguments ?? []).map((value, at) => {
      const path = paths?.[at];
      return path === undefined || path === null || path === 0 ? value : this.#find(request, path, known);
    });
  }
}

/** Only what is asked for comes back: office.js then throws where something else is read. */
function query(thing: Thing, select: readonly string[]): unknown {
  const names = select.map(small);
  const own = (one: Thing): Record<string, unknown> => {
    const values: Record<string, unknown> = one.id === undefined ? {} : { _Id: one.id };
    for (const name of names) {
      const [first, ...rest] = name.split('/');
      values[large(first!)] =
        rest.length > 0
          ? query(required(one.parts?.[first!], `part ${first}`)(), [rest.join('/')])
          : required(one.read?.[first!], `property ${first} to load`)();
    }
    return values;
  };
  return thing.items ? { _Items: thing.items().map(own) } : own(thing);
}

function required<T>(found: T | undefined, what: string): T {
  if (found === undefined) throw new Error(`the fake has no ${what}`);
  return found;
}
