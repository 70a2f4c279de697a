import { clear, createStore, del, delMany, get, getMany, keys, promisifyRequest, set, type UseStore } from "idb-keyval";

/**
 * What the browser keeps for the page, by the kind of its keys: the card of a workbook holds its name, a version what was in it at
 * one moment (the newest is the workbook), and what could not be read stands aside as it was found. The file that a workbook came
 * from is kept once, under its digest, and a version that rests on one names it in `uses`. Nothing written is written over.
 */
type Key =
  | readonly ["card", id: string]
  | readonly ["version" | "aside" | "uses", id: string, moment: number]
  | readonly ["file", id: string, digest: string];

type Moment = Extract<Key, readonly ["version" | "aside" | "uses", string, number]>;

/** A file and what tells it from others. */
export interface Filed {
  readonly digest: string;
  readonly bytes: Uint8Array;
}

let opened: UseStore | undefined;
const place = (): UseStore => {
  opened ??= createStore("porewise", "work");
  return opened;
};

const ours = (key: unknown): key is Key =>
  Array.isArray(key) &&
  typeof key[1] === "string" &&
  (key[0] === "card" ||
    (key[0] === "file" ? typeof key[2] === "string" : typeof key[2] === "number" && ["version", "aside", "uses"].includes(key[0])));

const all = async (): Promise<Key[]> => (await keys<any>(place())).filter(ours);

const isOf =
  <K extends Moment[0]>(kind: K, id?: string) =>
  (key: Key): key is readonly [K, string, number] =>
    key[0] === kind && (id === undefined || key[1] === id);

const asKeys = (some: readonly Key[]): IDBValidKey[] => some as unknown as IDBValidKey[];

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

const unnamed = "Unnamed workbook";

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
  for (const key of (await all()).filter(isOf("version"))) moments.set(key[1], [...(moments.get(key[1]) ?? []), key[2]]);
  const names = await namesOf([...moments.keys()]);
  return [...moments]
    .map(([id, versions]) => ({ id, name: names.get(id)!, versions: versions.sort((a, b) => b - a) }))
    .sort((a, b) => b.versions[0] - a.versions[0]);
}

/** The moments of a workbook's versions, newest first. */
export const momentsOf = async (id: string): Promise<number[]> =>
  (await all())
    .filter(isOf("version", id))
    .map(([, , moment]) => moment)
    .sort((a, b) => b - a);

export const version = (id: string, moment: number): Promise<unknown> => get(["version", id, moment], place());

export const fileAt = (id: string, digest: string): Promise<Uint8Array | undefined> => get(["file", id, digest], place());

/** Files that are known to be kept: they need no second writing. */
const filed = new Set<string>();

/**
 * Keeps a version, the name and the file that it rests on, all or none. Committed at once, so that the browser finishes even where the
 * page goes meanwhile.
 */
export async function keepVersion(id: string, name: string, moment: number, kept: object, file?: Filed): Promise<void> {
  const mark = file && `${id} ${file.digest}`;
  await place()("readwrite", (records) => {
    records.put(kept, ["version", id, moment]);
    records.put({ name }, ["card", id]);
    if (file) records.put(file.digest, ["uses", id, moment]);
    if (file && !filed.has(mark!)) records.put(file.bytes, ["file", id, file.digest]);
    records.transaction.commit();
    return promisifyRequest<void>(records.transaction);
  });
  if (mark) filed.add(mark);
}

/** Lets versions go, and each file that no version rests on any more. */
export async function forgetVersions(id: string, moments: readonly number[]): Promise<void> {
  if (!moments.length) return;
  await delMany(asKeys(moments.flatMap((moment) => [["version", id, moment] as const, ["uses", id, moment] as const])), place());
  const own = (await all()).filter((key) => key[1] === id);
  const used = new Set(await getMany<string>(asKeys(own.filter(isOf("uses"))), place()));
  const idle = own.filter((key) => key[0] === "file" && !used.has(key[2]));
  for (const [, , digest] of idle) filed.delete(`${id} ${digest}`);
  await delMany(asKeys(idle), place());
}

export const rename = (id: string, name: string): Promise<void> => set(["card", id], { name }, place());

/** Deletes a workbook with all its versions; what stands aside of it stays, and the files with it. */
export async function remove(id: string): Promise<void> {
  const own = (await all()).filter((key) => key[1] === id);
  const stays = own.some(isOf("aside"));
  const goes = own.filter(([kind]) => kind !== "aside" && !(stays && kind === "file"));
  for (const key of goes) if (key[0] === "file") filed.delete(`${id} ${key[2]}`);
  await delMany(asKeys(goes), place());
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
  const own = (await all()).filter(isOf("aside"));
  const found = await getMany<{ name: string }>(asKeys(own), place());
  return own.map(([, id, moment], i) => ({ id, moment, name: found[i]?.name ?? unnamed }));
}

export const aside = async ({ id, moment }: Aside): Promise<unknown> =>
  (await get<{ kept: unknown }>(["aside", id, moment], place()))?.kept;

export const removeAside = ({ id, moment }: Aside): Promise<void> => del(["aside", id, moment], place());

export function removeAll(): Promise<void> {
  filed.clear();
  return clear(place());
}
