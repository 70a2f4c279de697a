/** The name in the address of this page: help in a spreadsheet leads to a function by it. Whether it is one, the catalogue knows. */
export function named(): string | undefined {
  const [, name] = /^#([a-z]+)$/i.exec(location.hash) ?? [];
  return name && name !== "run" ? name.toUpperCase() : undefined;
}
