declare function importScripts(...addresses: string[]): void;

/** The packages' own files, unmodified, as the page loads them: their globals must stand before anything here asks for them. */
importScripts("vendor/owl.iife.min.js", "vendor/o_spreadsheet.min.iife.js");
