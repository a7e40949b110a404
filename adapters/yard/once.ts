/** Remembers the keys of forms that were taken, so that a double press says a thing once. Holds the last `most` keys. */
export function createOnce(most: number): (key: string) => boolean {
  const seen = new Set<string>();
  return (key) => {
    if (key === '') return true;
    if (seen.has(key)) return false;
    seen.add(key);
    const [oldest] = seen;
    if (seen.size > most && oldest !== undefined) seen.delete(oldest);
    return true;
  };
}
