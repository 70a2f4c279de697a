/** Hands a file to the browser's own saving; where a pane may not save, nothing happens, and the words beside the button say where else it is. */
export function saveFile(name: string, data: BlobPart, type: string): void {
  const address = URL.createObjectURL(new Blob([data], { type }));
  const link = Object.assign(document.createElement("a"), { href: address, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

export const saveText = (name: string, text: string): void => saveFile(name, text, "application/xml");

export const workbookType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
