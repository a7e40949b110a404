/** The inks of the drawings: the pages' own colours, by the names that drawings use. */
export type Inks = Readonly<Record<'paper' | 'ink' | 'tone' | 'part' | 'marigold' | 'ring' | 'danger', string>>;

export const INKS: Readonly<Record<'light' | 'dark', Inks>> = {
  light: { paper: '#fbf6e9', ink: '#143229', tone: '#e6dfc8', part: '#c3d3bb', marigold: '#f4ad22', ring: '#143229', danger: '#8c100d' },
  dark: { paper: '#182b25', ink: '#f3e9d2', tone: '#24392f', part: '#3c5a4d', marigold: '#f0ad2e', ring: '#f3e9d2', danger: '#ffb0a4' },
};
