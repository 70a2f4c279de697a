/** The archive inside a page of one file: paths with the lengths of their contents, then the contents. */
export type Packed = readonly (readonly [path: string, length: number])[];

export const workbookEnd = ".xlsx";
