/** The engine's names of sheets hold no apostrophe: the raised comma of print takes its place. */
export const engineSheet = (name: string): string => name.replace(/'/g, "’");

/** `'It''s so'!`, with which a reference starts, as the engine reads it. */
export const engineReference = (text: string): string => text.replace(/''/g, "’");

/** Longer names of sheets are refused by other programs. */
export const longestSheetName = 31;

/** Two names of sheets with one key cannot stand in one workbook. */
export const sheetKey = (name: string): string => name.trim().toUpperCase();

export const quotedSheet = (name: string): string => `'${name.replace(/'/g, "''")}'`;

/** A sheet's name in front of a reference. */
export const sheetWord = (name: string): string => `${quotedSheet(name)}!`;
