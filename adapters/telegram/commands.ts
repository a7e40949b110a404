/** A word in the app's menu, and what it says for the hirer who presses it. */
export type Command = { readonly command: string; readonly description: string; readonly words: string };

export const COMMANDS: readonly Command[] = [
  { command: 'start', description: 'Say hello and see what people ask first', words: 'hello' },
  { command: 'person', description: 'Get a person from the yard', words: 'I want to talk to a person' },
  { command: 'hours', description: 'When the yard is open, and the numbers to ring', words: 'When are you open?' },
];

export type Typed = { readonly words: string; readonly startToken: string | null };

/**
 * What a hirer's text means. '/start TOKEN' is how the app opens t.me/BOT?start=TOKEN; a command of the menu becomes its
 * words; any other text, an unknown command too, stays as it was typed.
 */
export function readTyped(text: string): Typed {
  const match = /^\/(\w+)(?:@\w+)?(?:\s+(\S+)\s*)?$/.exec(text);
  const command = COMMANDS.find((each) => each.command === match?.[1]?.toLowerCase());
  if (command === undefined) return { words: text, startToken: null };
  const rest = match?.[2];
  if (rest === undefined) return { words: command.words, startToken: null };
  return command.command === 'start'
    ? { words: '', startToken: rest }
    : { words: `${command.words} ${rest}`, startToken: null };
}
