/** Bytes as Excel takes them. */
export function base64(file: Uint8Array): string {
  const slice = 0x8000;
  let text = "";
  for (let at = 0; at < file.length; at += slice) text += String.fromCharCode(...file.subarray(at, at + slice));
  return btoa(text);
}
