/** The key under which a message is stored: the sender's own, within their thread. A press counts once for each choice. */
export function storedKey(key: string, choice: string | null, address: string): string {
  return `${address}.${key}${choice === null ? '' : `.${choice}`}`;
}

/** What the sender's page called it; null when the key is not of this thread. */
export function sentKey(stored: string, address: string): string | null {
  return stored.startsWith(`${address}.`) ? (stored.slice(address.length + 1).split('.')[0] ?? null) : null;
}
