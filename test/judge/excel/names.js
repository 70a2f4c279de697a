export const letters = (column) =>
  column < 26 ? String.fromCharCode(65 + column) : letters(Math.floor(column / 26) - 1) + letters(column % 26);
export const quoted = (name) => (/^\w+$/.test(name) ? name : `'${name.replace(/'/g, "''")}'`);
export const columnOf = (word) => [...word].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
/** An object that is not there: steps lead on from it to nothing, and batches are told null. */
export const isNull = {};
export const refusal = (code, message) => Object.assign(new Error(message ?? code), { code });

let counter = 0;
export const next = () => ++counter;
