import { clear, createStore, del, delMany, get, getMany, keys, promisifyRequest, set, type UseStore } from "idb-keyval";

/**
 * What the browser keeps for the page, under keys of three kinds: the card of a workbook holds its name, a version what was in it at
 * one moment (the newest is the workbook), and what could not be read stands aside as it was found. Nothing written is written over.
 */
type Key = readonly ["card", id: string] | readonly ["version" | "aside", id: string, moment: number];

let opened: UseStore | undefined;
const place = (): UseStore => {
  opened ??= createStore("porewise", "work");
  return opened;
};

const ours = (key: unknown): key is Key =>
  Array.isArray(key) &&
  typeof key[1] === "string" &&
  (key[0] === "card" || (typeof key[2] === "number" && ["version", "aside"].includes(key[0])));

const all = async (): Promise<Key[]> => (await keys<any>(place())).filter(ours);

export interface Shelved {
  readonly id: string;
  readonly name: string;
  /** The moments of its versions, newest first. */
  readonly versions: readonly number[];
}

export interface Aside {
  readonly id: string;
  readonly moment: number;
  readonly name: string;
}

const unnamed = "Workbook without a name";

async function namesOf(ids: readonly string[]): Promise<Map<string, string>> {
  const cards = await getMany<{ name?: unknown }>(
    ids.map((id) => ["card", id]),
    place(),
  );
  return new Map(ids.map((id, i) => [id, typeof cards[i]?.name === "string" ? (cards[i].name as string) : unnamed]));
}

/** The workbooks, the one changed last first. */
export async function shelf(): Promise<Shelved[]> {
  const moments = new Map<string, number[]>();
  for (const key of await all()) if (key[0] === "version") moments.set(key[1], [...(moments.get(key[1]) ?? []), key[2]]);
  const names = await namesOf([...moments.keys()]);
  return [...moments]
    .map(([id, versions]) => ({ id, name: names.get(id)!, versions: versions.sort((a, b) => b - a) }))
    .sort((a, b) => b.versions[0] - a.versions[0]);
}

/** The moments of a workbook's versions, newest first. */
export const momentsOf = async (id: string): Promise<number[]> =>
  (await all()).flatMap((key) => (key[0] === "version" && key[1] === id ? [key[2]] : [])).sort((a, b) => b - a);

export const version = (id: string, moment: number): Promise<unknown> => get(["version", id, moment], place());

/** Keeps a version and the name, both or neither. Told to commit at once, the browser finishes even where the page goes meanwhile. */
export const keepVersion = (id: string, name: string, moment: number, kept: object): Promise<void> =>
  place()("readwrite", (records) => {
    records.put(kept, ["version", id, moment]);
    records.put({ name }, ["card", id]);
    records.transaction.commit();
    return promisifyRequest<void>(records.transaction);
  });

export const forgetVersions = (id: string, moments: readonly number[]): Promise<void> =>
  delMany(
    moments.map((moment) => ["version", id, moment]),
    place(),
  );

export const rename = (id: string, name: string): Promise<void> => set(["card", id], { name }, place());

/** Deletes a workbook with all its versions; what stands aside of it stays. */
export async function remove(id: string): Promise<void> {
  const own = (await all()).filter((key) => key[0] !== "aside" && key[1] === id);
  await delMany(own as unknown as IDBValidKey[], place());
}

/** Takes a version out of the workbook, and keeps it as it is. */
export async function setAside(id: string, moment: number): Promise<void> {
  const kept = await version(id, moment);
  if (kept === undefined) return;
  const name = (await namesOf([id])).get(id)!;
  await place()("readwrite", (records) => {
    records.put({ name, kept }, ["aside", id, moment]);
    records.delete(["version", id, moment]);
    return promisifyRequest(records.transaction);
  });
}

export async function asides(): Promise<Aside[]> {
  const own = (await all()).filter((key) => key[0] === "aside");
  const found = await getMany<{ name: string }>(own as unknown as IDBValidKey[], place());
  return own.map(([, id, moment], i) => ({ id, moment: moment!, name: found[i]?.name ?? unnamed }));
}

export const aside = async ({ id, moment }: Aside): Promise<unknown> =>
  (await get<{ kept: unknown }>(["aside", id, moment], place()))?.kept;

export const removeAside = ({ id, moment }: Aside): Promise<void> => del(["aside", id, moment], place());

export const removeAll = (): Promise<void> => clear(place());
