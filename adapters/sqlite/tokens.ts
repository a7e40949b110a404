import type { Store, Token } from '../../src/index.ts';
import { type Connection, prepare } from './connection.ts';
import type { Writer } from './group-commit.ts';
import type { TokenRow } from './tables.ts';

export function tokensIn(
  at: Connection,
  writer: Writer,
): Pick<Store, 'putToken' | 'token' | 'tokens' | 'spendToken' | 'dropToken'> {
  type Asked = { hash: string; use: string; now: number };
  const find = prepare(at, (sql, given: Asked) =>
    sql
      .selectFrom('tokens')
      .selectAll()
      .where('hash', '=', given.hash)
      .where('use', '=', given.use)
      .where('expires_ms', '>', given.now),
  );
  // Asked a few times a day, of a table with a row a booking: no index of its own.
  const every = prepare(at, (sql, given: { use: string; now: number }) =>
    sql.selectFrom('tokens').selectAll().where('use', '=', given.use).where('expires_ms', '>', given.now),
  );
  const put = prepare(at, (sql, given: TokenRow) => {
    const rest = { use: given.use, subject: given.subject, data: given.data, expires_ms: given.expires_ms };
    return sql
      .insertInto('tokens')
      .values({ hash: given.hash, ...rest })
      .onConflict((conflict) => conflict.column('hash').doUpdateSet(rest));
  });
  const spend = prepare(at, (sql, given: Asked) =>
    sql
      .deleteFrom('tokens')
      .where('hash', '=', given.hash)
      .where('use', '=', given.use)
      .where('expires_ms', '>', given.now)
      .returningAll(),
  );
  const drop = prepare(at, (sql, given: { hash: string }) => sql.deleteFrom('tokens').where('hash', '=', given.hash));
  return {
    putToken: ({ hash, use, subject, data, expiresMs }) =>
      writer.write(() => {
        put.run({ hash, use, subject, data: JSON.stringify(data), expires_ms: expiresMs });
      }),
    token: async (hash, use, now) => tokenOf(find.first({ hash, use, now })),
    // Sorted here: databases collate differently.
    tokens: async (use, now, subject) =>
      every
        .all({ use, now })
        .flatMap((row) => tokenOf(row) ?? [])
        .filter((token) => subject === undefined || token.subject === subject)
        .sort((a, b) => inOrder(a.subject, b.subject) || inOrder(a.hash, b.hash)),
    spendToken: (hash, use, now) => writer.write(() => tokenOf(spend.first({ hash, use, now }))),
    dropToken: (hash) =>
      writer.write(() => {
        drop.run({ hash });
      }),
  };
}

function tokenOf(row: TokenRow | undefined): Token | null {
  if (row === undefined) return null;
  return {
    hash: row.hash,
    use: row.use as Token['use'],
    subject: row.subject,
    data: JSON.parse(row.data) as Token['data'],
    expiresMs: row.expires_ms,
  };
}

function inOrder(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
