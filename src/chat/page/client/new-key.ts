/** A fresh message id. `crypto.randomUUID` is missing where the page is opened over plain http by a name, so it is made by hand. */
export function newKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
