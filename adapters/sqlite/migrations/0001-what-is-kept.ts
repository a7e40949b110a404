import { type ColumnDefinitionBuilder, type Kysely, type Migration, sql } from 'kysely';

/** The one piece that differs by engine: PostgreSQL says `generated always as identity` here. */
const growing = (column: ColumnDefinitionBuilder) => column.primaryKey().autoIncrement();
const key = (column: ColumnDefinitionBuilder) => column.primaryKey().notNull();
const needed = (column: ColumnDefinitionBuilder) => column.notNull();
const ofThread = (column: ColumnDefinitionBuilder) => column.notNull().references('threads.id');
const ofLine = (column: ColumnDefinitionBuilder) => column.primaryKey().references('lines.id');
const zero = (column: ColumnDefinitionBuilder) => column.notNull().defaultTo(0);

/** Threads with what was said in them, the two queues, bookings, tokens, notes and jobs. */
export const whatIsKept: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('threads')
      .addColumn('id', 'text', key)
      .addColumn('channel', 'text', needed)
      .addColumn('address', 'text', needed)
      .addColumn('booking', 'text')
      .addColumn('keeper', 'text', needed)
      .addColumn('since_ms', 'bigint', needed)
      .addColumn('version', 'integer', needed)
      .addColumn('body', 'text', needed)
      .addUniqueConstraint('threads_address', ['channel', 'address'])
      .execute();
    await db.schema.createIndex('threads_booking').on('threads').column('booking').execute();
    await db.schema.createIndex('threads_keeper').on('threads').column('keeper').execute();

    await db.schema
      .createTable('lines')
      .addColumn('id', 'integer', growing)
      .addColumn('thread_id', 'text', ofThread)
      .addColumn('at_ms', 'bigint', needed)
      .addColumn('who', 'text', needed)
      .addColumn('reply', 'text')
      .execute();
    await db.schema.createIndex('lines_thread').on('lines').columns(['thread_id', 'id']).execute();

    await db.schema
      .createTable('messages')
      .addColumn('seq', 'integer', ofLine)
      .addColumn('thread_id', 'text', ofThread)
      .addColumn('channel', 'text', needed)
      .addColumn('key', 'text', needed)
      .addColumn('handled_ms', 'bigint')
      .addColumn('body', 'text', needed)
      .addUniqueConstraint('messages_key', ['channel', 'key'])
      .execute();
    // Only what waits is in the queues' indexes, so they stay small however long the history.
    await db.schema
      .createIndex('messages_waiting')
      .on('messages')
      .column('seq')
      .where(sql.ref('handled_ms'), 'is', null)
      .execute();
    await db.schema
      .createIndex('messages_waiting_thread')
      .on('messages')
      .columns(['thread_id', 'seq'])
      .where(sql.ref('handled_ms'), 'is', null)
      .execute();

    await db.schema
      .createTable('outbox')
      .addColumn('id', 'integer', ofLine)
      .addColumn('thread_id', 'text', ofThread)
      .addColumn('channel', 'text', needed)
      .addColumn('address', 'text', needed)
      .addColumn('tries', 'integer', zero)
      .addColumn('not_before_ms', 'bigint', zero)
      .addColumn('sending', 'integer', zero)
      .addColumn('outcome', 'text')
      .addColumn('detail', 'text')
      .addColumn('settled_ms', 'bigint')
      .execute();
    await db.schema
      .createIndex('outbox_waiting')
      .on('outbox')
      .columns(['channel', 'id'])
      .where(sql.ref('outcome'), 'is', null)
      .execute();
    await db.schema
      .createIndex('outbox_waiting_address')
      .on('outbox')
      .columns(['channel', 'address', 'id'])
      .where(sql.ref('outcome'), 'is', null)
      .execute();

    await db.schema
      .createTable('events')
      .addColumn('id', 'integer', growing)
      .addColumn('thread_id', 'text', ofThread)
      .addColumn('at_ms', 'bigint', needed)
      .addColumn('kind', 'text', needed)
      .addColumn('body', 'text', needed)
      .execute();
    await db.schema.createIndex('events_thread').on('events').columns(['thread_id', 'id']).execute();
    await db.schema.createIndex('events_kind').on('events').columns(['kind', 'id']).execute();

    await db.schema
      .createTable('bookings')
      .addColumn('ref', 'text', key)
      .addColumn('hirer', 'text', needed)
      .addColumn('first_name', 'text', needed)
      .addColumn('people', 'text')
      .addColumn('van', 'text', needed)
      .addColumn('site', 'text')
      .addColumn('pitch', 'text')
      .addColumn('amps', 'double precision')
      .addColumn('from_day', 'text', needed)
      .addColumn('to_day', 'text')
      .addColumn('phone', 'text')
      .addColumn('note', 'text', needed)
      .execute();

    await db.schema
      .createTable('tokens')
      .addColumn('hash', 'text', key)
      .addColumn('use', 'text', needed)
      .addColumn('subject', 'text', needed)
      .addColumn('data', 'text', needed)
      .addColumn('expires_ms', 'bigint', needed)
      .execute();
    await db.schema.createTable('notes').addColumn('name', 'text', key).addColumn('value', 'text', needed).execute();
    await db.schema
      .createTable('jobs')
      .addColumn('key', 'text', key)
      .addColumn('due_ms', 'bigint', needed)
      .addColumn('data', 'text', needed)
      .execute();
    await db.schema.createIndex('jobs_due').on('jobs').column('due_ms').execute();
  },
};
