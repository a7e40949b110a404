/// <reference lib="dom" />
/// <reference lib="dom.iterable" />

/** Keeps which steps are ticked, for as long as this device has the page. */
export function keepTicks(
  within: HTMLElement,
  keeps: Pick<Storage, 'getItem' | 'setItem'>,
  path: string,
): { readonly restore: (part: ParentNode) => void } {
  const name = `ticks ${path}`;
  const ticked = new Set<string>(read());

  function read(): string[] {
    try {
      const found: unknown = JSON.parse(keeps.getItem(name) ?? '[]');
      return Array.isArray(found) ? found.filter((one) => typeof one === 'string') : [];
    } catch {
      return [];
    }
  }

  function restore(part: ParentNode): void {
    for (const box of part.querySelectorAll<HTMLInputElement>('[data-tick]'))
      box.checked = ticked.has(box.dataset.tick ?? '');
  }

  within.addEventListener('change', (event) => {
    const box = event.target;
    if (!(box instanceof HTMLInputElement) || box.dataset.tick === undefined) return;
    if (box.checked) ticked.add(box.dataset.tick);
    else ticked.delete(box.dataset.tick);
    try {
      keeps.setItem(name, JSON.stringify([...ticked].slice(-500)));
    } catch {
      // Nothing is kept here; the ticks last as long as the page.
    }
  });
  restore(within);
  return { restore };
}
