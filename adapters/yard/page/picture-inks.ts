/// <reference lib="dom" />

/** The page's own colours, as they are at this moment: they follow the device. */
export type Inks = Readonly<
  Record<'paper' | 'sheet' | 'grass' | 'ink' | 'quiet' | 'rule' | 'marigold' | 'onMarigold', string>
>;

export function inksNow(): Inks {
  const style = getComputedStyle(document.documentElement);
  const ink = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  return {
    paper: ink('paper'),
    sheet: ink('sheet'),
    grass: ink('grass'),
    ink: ink('ink'),
    quiet: ink('quiet'),
    rule: ink('rule'),
    marigold: ink('marigold'),
    onMarigold: ink('on-marigold'),
  };
}

export const SIGN_FACE = 'system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", sans-serif';
