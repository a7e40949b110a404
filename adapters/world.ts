import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Hono } from 'hono';
import type { Logger } from 'pino';
import {
  aimMinutes,
  type Channel,
  type Clock,
  dayOf,
  type FirmData,
  type Jobs,
  type Store,
  type VanScope,
  welcomeReply,
} from '../src/index.ts';
import { WorkError } from './cli/command.ts';
import { acceptPriors, faultReport, vanFaultsDue } from './cli/fault-records.ts';
import { createGrowthDesk } from './cli/growth-desk.ts';
import { createGrowth } from './cli/growth-trials.ts';
import { preparedFolder } from './cli/served-graph.ts';
import { databaseFile } from './cli/with-data.ts';
import type { Config } from './config.ts';
import { createDutyRounds } from './duty-rounds.ts';
import { hashOf, newToken } from './files/tokens.ts';
import { createFollowUps } from './follow-ups.ts';
import { createCounters } from './http/counters.ts';
import { createServer } from './http/server.ts';
import { createUploads } from './http/uploads.ts';
import { createWakes } from './http/wakes.ts';
import type { LiveGraph } from './live-graph.ts';
import { counted } from './pages/counted.ts';
import { contactSheet } from './pictures/contact-sheet.ts';
import { createPictures } from './pictures/pictures.ts';
import { createShell, type Shell } from './shell.ts';
import { openSqlite } from './sqlite/sqlite-store.ts';
import { telegramRoutes } from './telegram/routes.ts';
import { createTelegram, type TelegramChannel } from './telegram/telegram.ts';
import { createLearn } from './training/models.ts';
import { createWebChannel } from './web/channel.ts';
import { type Priors, YARD } from './yard/world.ts';
import { createYard } from './yard/yard.ts';

export type World = {
  readonly store: Store;
  readonly jobs: Jobs;
  readonly shell: Shell;
  readonly start: () => Promise<{ readonly port: number }>;
  /** Takes no more, finishes what is at work, closes. Nothing accepted is lost. */
  readonly stop: () => Promise<void>;
};

type StaffDeskActions = Pick<Shell, 'take' | 'giveBack' | 'say' | 'putRight' | 'note' | 'pass'>;

export type WorldParts = {
  readonly config: Config;
  readonly graph: LiveGraph;
  readonly clock: Clock;
  readonly log: Logger;
};

/** Joins the channels, the pages, the store and the core into one running program. */
export async function createWorld({ config, graph, clock, log }: WorldParts): Promise<World> {
  mkdirSync(config.dataFolder, { recursive: true });
  const { store, jobs } = await openSqlite(databaseFile(config.dataFolder));
  const wakes = createWakes();
  const counters = createCounters();
  const uploads = createUploads(join(config.dataFolder, 'uploads'));
  const pictures = createPictures(() => graph.served().knowledge.pictures);
  const secure = config.url.startsWith('https:');
  const desk: { current: TelegramChannel['desk'] } = { current: null };

  const onChange = (threadId: string): void => {
    yard.changed();
    wakes.wake(threadId);
    desk.current?.wake();
    store
      .thread(threadId)
      .then((thread) => thread !== null && wakes.wake(thread.address))
      .catch((error: unknown) => log.warn({ err: error }, 'a page was not woken'));
  };
  // Channels hand messages to the shell and the shell hands replies to the channels: each finds the other when it is called.
  const receive: Shell['receive'] = (message) => shell.receive(message);
  const actions: StaffDeskActions = {
    take: (...said) => shell.take(...said),
    giveBack: (...said) => shell.giveBack(...said),
    say: (...said) => shell.say(...said),
    putRight: (...said) => shell.putRight(...said),
    note: (...said) => shell.note(...said),
    pass: (...said) => shell.pass(...said),
  };
  const trouble: { now: string | null } = { now: null };
  const spendStaffToken = async (token: string): Promise<string | null> =>
    (await store.spendToken(hashOf(token), 'staff-telegram', clock.nowMs()))?.subject ?? null;
  const telegram =
    config.telegram === null
      ? null
      : createTelegram({
          ...config.telegram,
          receive,
          store,
          desk:
            config.telegram.staffChat === null
              ? null
              : {
                  chat: Number(config.telegram.staffChat),
                  actions,
                  spendStaffToken,
                  trouble: (what) => (trouble.now = what),
                },
          gone: async (address) => {
            const thread = await store.threadAt(address);
            if (thread !== null)
              await shell.note(
                thread.id,
                'Pitchhand',
                'The hirer has blocked the bot. Ring the number on the booking.',
              );
          },
          picturePng: pictures.png,
          barPng: pictures.barPng,
          openForeign: uploads.open,
          clock,
          log,
        });
  desk.current = telegram?.desk ?? null;
  const openFile = telegram === null ? {} : { openFile: telegram.open };

  const web = createWebChannel({
    firm: firmOf(graph),
    receive,
    store,
    clock,
    tokens: { newToken, hashOf },
    welcome: (booking) => welcomeReply(booking, graph.served()),
    vanOf: ({ van }) => {
      const scope = graph.served().knowledge.vans.get(van);
      return scope === undefined ? null : sightOf(scope);
    },
    fleet: [...graph.served().knowledge.vans.values()].map(sightOf),
    siteName: (site) => graph.served().knowledge.places.sites[site]?.name ?? null,
    pictureSvg: pictures.svg,
    uploads,
    ...openFile,
    wakes,
    script: built('chat.js'),
    secure,
  });
  const growthDesk = createGrowthDesk({
    store,
    folder: config.graphFolder,
    cacheFolder: preparedFolder(),
    learn: createLearn(preparedFolder()),
    reload: graph.reload,
    nowMs: clock.nowMs,
  });
  const growth = createGrowth(growthDesk, () => wakes.wake(YARD));
  const followUps = createFollowUps({
    store,
    served: graph.served,
    changes: growthDesk.changes,
    gaps: growthDesk.gaps,
    clock,
    log,
    onChange,
  });
  const yard = createYard({
    firm: firmOf(graph),
    store,
    clock,
    tokens: { newToken, hashOf },
    vans: new Map([...graph.served().knowledge.vans.values()].map((van) => [van.id, sightOf(van)] as const)),
    sites: new Map(Object.entries(graph.served().knowledge.places.sites).map(([id, site]) => [id, site.name] as const)),
    people: graph.served().knowledge.firm.people.map((person) => person.firstName),
    actions,
    aimMinutes: ({ reason }) => aimMinutes(reason, graph.served().knowledge.firm, clock.nowMs()),
    growth,
    dismissed: async (name) => desk.current?.forget(name),
    workshop: async () => {
      const { knowledge } = graph.served();
      const due = await vanFaultsDue(store, knowledge, null);
      return due.map(({ van, title, atMs }) => ({ van, what: title, since: dayOf(atMs, knowledge.firm.timeZone) }));
    },
    trouble: () => trouble.now ?? slipTrouble(graph),
    priors: priorsOf(config.graphFolder, store, graph, clock),
    drawings: () => contactSheet(graph.served().knowledge),
    pictureSvg: pictures.svg,
    uploads,
    ...openFile,
    wakes,
    script: built('yard.js'),
    pictureScript: built('graph.js'),
    secure,
    url: config.url,
  });
  const channels: readonly Channel[] = [web.channel, ...(telegram === null ? [] : [telegram])];
  const shell = createShell({ store, served: graph.served, clock, channels, log, onChange });
  const routes: { path: string; app: Hono }[] = [
    { path: '/chat', app: web.routes },
    { path: '/yard', app: yard.routes },
    ...(telegram === null ? [] : [{ path: '/telegram', app: telegramRoutes(telegram) }]),
  ];
  const rounds = createDutyRounds({
    store,
    firm: () => graph.served().knowledge.firm,
    clock,
    log,
    remind: async (threadId, text, urgent) => {
      yard.changed();
      await desk.current?.remind(threadId, text, urgent);
    },
    onChange,
  });
  const server = createServer({
    port: config.port,
    host: config.host,
    routes,
    ready: async () => {
      await store.note('ready');
      return { ok: true };
    },
    counters,
    wakes,
    secure,
    log: (what, about) => log.error(about, what),
  });

  return {
    store,
    jobs,
    shell,
    start: async () => {
      shell.start();
      rounds.start();
      followUps.start();
      await Promise.all(channels.map((channel) => channel.start()));
      return server.start();
    },
    stop: async () => {
      await server.stop();
      await rounds.stop();
      await followUps.stop();
      await Promise.all(channels.map((channel) => channel.stop()));
      await shell.stop();
      graph.stop();
      await store.close();
    },
  };
}

function firmOf(graph: LiveGraph): Pick<FirmData, 'name' | 'phone' | 'yard' | 'timeZone'> {
  const { name, phone, yard, timeZone } = graph.served().knowledge.firm;
  return { name, phone, yard, timeZone };
}

function sightOf({ id, data }: VanScope): {
  readonly name: string;
  readonly body: 'caravan' | 'campervan';
  readonly silhouette: string;
} {
  return { name: data.name, body: data.body, silhouette: id };
}

/** An edited graph that cannot be served: staff are told, because hirers go on getting the older answers. */
function slipTrouble(graph: LiveGraph): string | null {
  const count = graph.slips().length;
  return count === 0
    ? null
    : `The graph on disk has ${counted(count, 'slip')}, so the last good one is being served. 'pitchhand check' says where.`;
}

/** A page script, as the build left it beside the program; empty when the sources run unbuilt. */
function built(name: string): string {
  const file = join(dirname(fileURLToPath(import.meta.url)), name);
  return existsSync(file) ? readFileSync(file, 'utf8') : '';
}

/** What the walks have shown, and the operator's press on it. */
function priorsOf(folder: string, store: Store, graph: LiveGraph, clock: Clock): Priors {
  const report = () => faultReport(store, graph.served().knowledge, null, null);
  return {
    report,
    accept: async (symptom, van, by) => {
      const counts = (await report()).find((each) => each.symptom === symptom && each.van === van);
      if (counts === undefined) return 'No walk of it has ended.';
      try {
        await acceptPriors(counts, graph.served().knowledge, { folder, store, by, nowMs: clock.nowMs() });
      } catch (error) {
        if (error instanceof WorkError) return error.message;
        throw error;
      }
      await graph.reload();
      return null;
    },
  };
}
