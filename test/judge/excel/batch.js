import { book, root } from "./book.js";
import { isNull, refusal } from "./names.js";
import { references } from "./range.js";

/** What a step of a batch leads to; each path is walked once a batch. */
function walker(paths) {
  const known = new Map();
  const walk = (id) => {
    if (!known.has(id)) known.set(id, step(paths[id]));
    return known.get(id);
  };
  const step = ({ ObjectPathType: kind, Name, ParentObjectPathId, ArgumentInfo }) => {
    if (kind === 1 || kind === 2 || kind === 7) return root;
    if (kind === 6) return references.get(Name);
    const parent = walk(ParentObjectPathId);
    if (parent === isNull) return isNull;
    const given = ArgumentInfo?.Arguments ?? [];
    if (kind === 4) {
      parent[Name] ??= {};
      return parent[Name];
    }
    if (kind === 5) return parent.Item(...given);
    if (typeof parent[Name] !== "function") throw new Error(`this workbook has no ${Name}`);
    return parent[Name](...given);
  };
  return walk;
}

const pascal = (word) => word[0].toUpperCase() + word.slice(1);

function queried(object, words) {
  const told = object.key ? { _ReferenceId: object.key } : {};
  for (const word of words) {
    const steps = word.trim().split("/").map(pascal);
    const last = steps.pop();
    let [from, into] = [object, told];
    for (const step of steps) {
      into[step] ??= {};
      [from, into] = [from[step], into[step]];
    }
    into[last] = from[last];
  }
  if (object.Id) told.Id ??= object.Id;
  return told;
}

function act(walk, { ActionType: kind, Name, ObjectPathId, ArgumentInfo, QueryInfo }) {
  if (kind === 5) return null;
  const object = walk(ObjectPathId);
  if (object === isNull) return null;
  if (kind === 1) return object?.key ? { _ReferenceId: object.key } : object?.Id ? { Id: object.Id } : {};
  if (kind === 2)
    return object.items
      ? { _Items: object.items.map((item) => queried(item, QueryInfo.Select ?? ["id"])) }
      : queried(object, QueryInfo.Select);
  if (Name === "_KeepReference") return null;
  const given = ArgumentInfo?.Arguments ?? [];
  if (kind === 3 && typeof object[Name] !== "function") throw new Error(`this workbook has no ${Name}`);
  if (kind === 4) {
    object[Name] = given[0];
    return null;
  }
  return object[Name](...given) ?? null;
}

export function played({ Actions, ObjectPaths }) {
  const results = [];
  try {
    if (book.editing) throw refusal("InvalidOperationInCellEditMode");
    const walk = walker(ObjectPaths);
    for (const action of Actions) results.push({ ActionId: action.Id, Value: act(walk, action) });
    return { Results: results };
  } catch (error) {
    if (!error.code) console.error(error.stack);
    return { Results: results, Error: { Code: error.code ?? "GeneralException", Message: error.message, Location: "" } };
  }
}
