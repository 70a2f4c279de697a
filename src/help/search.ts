import MiniSearch from "minisearch";
import { stemmer } from "stemmer";
import type { Contract } from "../../shared/contract";
import { resultWords } from "../../shared/stub";
import { catalogue } from "../catalogue";
import { otherNames, speciesNames } from "../wood/species";
import { asked } from "./asked";

/** Stop words: too common to tell one question from another. */
const small = new Set(
  "a an and are as at be been by can could do does did for from get give go have how i in into is it its just like long many me much my need of on one or our out put should so some tell than that the them then there these they this to up use want was we what when where which who why will with would you your per".split(
    " ",
  ),
);

export const termOf = (word: string): string | null => {
  const plain = word.toLowerCase().replace(/[’']s?$/, "");
  return plain.length < 2 || small.has(plain) ? null : stemmer(plain);
};

interface Entry {
  readonly id: string;
  readonly name: string;
  readonly asks: string;
  readonly asked: string;
  readonly labels: string;
  readonly woods: string;
}

/** A wood by its name alone is a question too: how dense, and is it worth treating. */
const ofAnyWood = new Set(["GRAVITY", "SUITABILITY"]);
const woods = [...speciesNames, ...otherNames].join(" ");

const entryOf = (contract: Contract): Entry => ({
  id: contract.name,
  name: contract.name,
  asks: contract.asks,
  asked: asked[contract.name] ?? "",
  labels: [
    resultWords(contract.returns),
    ...Object.values(contract.args as Record<string, { label: string }>).map(({ label }) => label),
  ].join(" "),
  woods: ofAnyWood.has(contract.name) ? woods : "",
});

const index = new MiniSearch<Entry>({
  fields: ["name", "asks", "asked", "labels", "woods"],
  processTerm: termOf,
  searchOptions: {
    boost: { name: 3, asks: 2, asked: 2 },
    prefix: (term) => term.length > 2,
    fuzzy: (term) => (term.length > 4 ? 0.3 : false),
    weights: { fuzzy: 0.3, prefix: 0.6 },
  },
});
index.addAll(catalogue.map(entryOf));

const byName = new Map(catalogue.map((contract) => [contract.name as string, contract]));

export interface Found {
  /** Best first. */
  readonly hits: readonly Contract[];
  /** Where nothing was found: what comes nearest. */
  readonly near: readonly Contract[];
}

/** The functions that answer a question in a shop's own words; small words and endings do not count. */
export function found(question: string): Found {
  const contracts = (results: readonly { readonly id: string }[]) => results.map(({ id }) => byName.get(id)!);
  const results = index.search(question);
  if (results.length) {
    // A match on one common word is dropped beside one that shares most of the question.
    const least = results[0].score * 0.2;
    return { hits: contracts(results.filter(({ score }) => score >= least).slice(0, 8)), near: [] };
  }
  return { hits: [], near: contracts(index.search(question, { fuzzy: 0.4, prefix: true }).slice(0, 3)) };
}
