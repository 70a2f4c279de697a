declare const kindOf: unique symbol;

/** A number that knows what it measures, in the internal unit of its kind; costs nothing at run time. */
export type Quantity<K extends string> = number & { readonly [kindOf]: K };

/** Marks a plain number as the quantity a contract asks for: once a formula, at its return. */
export const as = <Q extends number>(n: number): Q => n as Q;
