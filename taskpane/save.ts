/** Starts a download. In a pane that may not download nothing happens: the words beside the button then say where else to save. */
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
