/** The function's name in the fragment of this page's address, where help in a spreadsheet leads; it may be no function. */
export function linkedName(): string | undefined {
  const [, name] = /^#([a-z]+)$/i.exec(location.hash) ?? [];
  return name && name !== "run" ? name.toUpperCase() : undefined;
}
