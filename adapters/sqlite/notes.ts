import type { Store } from '../../src/index.ts';
import { type Connection, prepare } from './connection.ts';
import type { Writer } from './group-commit.ts';

export function notesIn(at: Connection, writer: Writer): Pick<Store, 'note' | 'putNote' | 'putNoteSoon' | 'notes'> {
  const find = prepare(at, (sql, given: { name: string }) =>
    sql.selectFrom('notes').select('value').where('name', '=', given.name),
  );
  const put = prepare(at, (sql, given: { name: string; value: string }) =>
    sql
      .insertInto('notes')
      .values({ name: given.name, value: given.value })
      .onConflict((conflict) => conflict.column('name').doUpdateSet({ value: given.value })),
  );
  // Not `like`: it takes % and _ in a prefix for wildcards, and SQLite's ignores case.
  const from = prepare(at, (sql, given: { prefix: string; length: number }) =>
    sql
      .selectFrom('notes')
      .selectAll()
      .where(({ fn, val }) => fn('substr', ['name', val(1), val(given.length)]), '=', given.prefix),
  );
  return {
    note: async (name) => find.first({ name })?.value ?? null,
    putNote: (name, value) =>
      writer.write(() => {
        put.run({ name, value });
      }),
    putNoteSoon: (name, value) =>
      writer.writeSoon(() => {
        put.run({ name, value });
      }),
    // Sorted here: databases collate differently.
    notes: async (prefix) =>
      from.all({ prefix, length: [...prefix].length }).sort((a, b) => (a.name < b.name ? -1 : 1)),
  };
}
