CREATE TABLE "bookings" ("ref" text not null primary key,
  "hirer" text not null,
  "first_name" text not null,
  "people" text,
  "van" text not null,
  "site" text,
  "pitch" text,
  "amps" double precision,
  "from_day" text not null,
  "to_day" text,
  "phone" text,
  "note" text not null);

CREATE TABLE "events" ("id" integer primary key autoincrement,
  "thread_id" text not null references "threads" ("id"),
  "at_ms" bigint not null,
  "kind" text not null,
  "body" text not null);

CREATE INDEX "events_kind" on "events" ("kind",
  "id");

CREATE INDEX "events_thread" on "events" ("thread_id",
  "id");

CREATE TABLE "jobs" ("key" text not null primary key,
  "due_ms" bigint not null,
  "data" text not null);

CREATE INDEX "jobs_due" on "jobs" ("due_ms");

CREATE TABLE "lines" ("id" integer primary key autoincrement,
  "thread_id" text not null references "threads" ("id"),
  "at_ms" bigint not null,
  "who" text not null,
  "reply" text);

CREATE INDEX "lines_thread" on "lines" ("thread_id",
  "id");

CREATE TABLE "messages" ("seq" integer primary key references "lines" ("id"),
  "thread_id" text not null references "threads" ("id"),
  "channel" text not null,
  "key" text not null,
  "handled_ms" bigint,
  "body" text not null, constraint "messages_key" unique ("channel",
  "key"));

CREATE INDEX "messages_waiting" on "messages" ("seq") where "handled_ms" is null;

CREATE INDEX "messages_waiting_thread" on "messages" ("thread_id",
  "seq") where "handled_ms" is null;

CREATE TABLE "notes" ("name" text not null primary key,
  "value" text not null);

CREATE TABLE "outbox" ("id" integer primary key references "lines" ("id"),
  "thread_id" text not null references "threads" ("id"),
  "channel" text not null,
  "address" text not null,
  "tries" integer default 0 not null,
  "not_before_ms" bigint default 0 not null,
  "sending" integer default 0 not null,
  "outcome" text,
  "detail" text,
  "settled_ms" bigint);

CREATE INDEX "outbox_waiting" on "outbox" ("channel",
  "id") where "outcome" is null;

CREATE INDEX "outbox_waiting_address" on "outbox" ("channel",
  "address",
  "id") where "outcome" is null;

CREATE TABLE "threads" ("id" text not null primary key,
  "channel" text not null,
  "address" text not null,
  "booking" text,
  "keeper" text not null,
  "since_ms" bigint not null,
  "version" integer not null,
  "body" text not null, constraint "threads_address" unique ("channel",
  "address"));

CREATE INDEX "threads_booking" on "threads" ("booking");

CREATE INDEX "threads_keeper" on "threads" ("keeper");

CREATE TABLE "tokens" ("hash" text not null primary key,
  "use" text not null,
  "subject" text not null,
  "data" text not null,
  "expires_ms" bigint not null);
