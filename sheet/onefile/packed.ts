/** What is packed into a page of one file: paths with the lengths of their contents, one after the other. */
export type Packed = readonly (readonly [path: string, length: number])[];

export const workbookEnd = ".xlsx";
