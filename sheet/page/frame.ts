import "../../taskpane/inside";

/** A frame of the pane, open at a view. Files on a disk are strangers to each other: a page that is one file hands over the pane's text instead. */
export function paneFrame(title: string, view = ""): HTMLIFrameElement {
  const frame = Object.assign(document.createElement("iframe"), { title });
  const inside = globalThis.porewiseInside?.("pane.html");
  if (inside) frame.srcdoc = new TextDecoder().decode(inside).replace("<html ", `<html data-view="${view}" `);
  else frame.src = `pane.html${view}`;
  return frame;
}
