import { describe, expect, it } from 'vitest';
import { createLanguageReader } from '../../../src/language/language-of.ts';
import { rightWords } from '../../../src/language/right-words.ts';

const languageOf = createLanguageReader(
  (word) => rightWords().has(word) || ['plover', 'curlew', 'wifi'].includes(word),
);

describe('the language of a text', () => {
  it.each([
    ['cy', "Sut mae agor y to? Dydy'r golau ddim yn gweithio"],
    ['de', 'Wie bekomme ich das Dach wieder herunter?'],
    ['fr', "Comment fait-on pour vider l'eau du réservoir ?"],
    ['nl', 'Hoe krijg ik het raam weer dicht?'],
    ['es', '¿Cómo se abre la ventana del techo?'],
    ['it', 'Come si chiude la finestra del tetto?'],
    ['pl', 'Jak zamknąć okno w dachu?'],
    ['pt', 'Como é que se fecha a janela do tejadilho?'],
  ])('is %s for %s', (code, text) => {
    expect(languageOf(text)).toBe(code);
  });

  it.each([
    'how do I shut the roof window',
    'wher is teh gaz botle pls',
    'ta ra',
    'hi',
    'ok',
    '',
    '???',
    'the man said no die in the kit',
    'lkjh lkjh',
    'wots the wifi code for the Curlew m8',
  ])('is English, or nothing else, for %j', (text) => {
    expect(languageOf(text)).toBe('en');
  });
});
