import { type Context, Hono, type MiddlewareHandler } from 'hono';
import { figuresCsv, thinIn } from '../../src/index.ts';
import { type Form, readForm } from '../http/forms.ts';
import { freshKey } from '../http/fresh-key.ts';
import type { Theme } from '../pages/colours.ts';
import { drawingPage, drawingsPage } from './drawings-page.tsx';
import { faultsPage } from './faults-page.tsx';
import type { FrameProps } from './frame.tsx';
import { figuresPage, thinPage } from './growth-figures-page.tsx';
import { decisionIn } from './growth-form.ts';
import { type Drawn, HOME } from './growth-frame.tsx';
import { groupPage } from './growth-group-page.tsx';
import { changesPage, decidedPage, groupsPage, hinderedPage } from './growth-pages.tsx';
import { TrialParts, trialPage } from './growth-trial-page.tsx';
import type { Growth } from './growth-world.ts';
import { live } from './live.ts';
import { createOnce } from './once.ts';
import { pictureRoutes } from './picture-routes.tsx';
import { ownForm, type Session } from './session.ts';
import type { YardWorld } from './world.ts';

const KEYS_KEPT = 500;

/**
 * The operator's pages: from what went unanswered to a tried, published change. Signed in before.
 *
 * @param picture Path of the script that draws the graph, for the one page that does.
 */
export function growthRoutes(world: YardWorld, growth: Growth, files: FrameProps['files'], picture: string): Hono {
  const app = new Hono();
  const firstTime = createOnce(KEYS_KEPT);
  const drawn = (c: Context): Drawn => ({ world, files, session: c.get('session') });
  app.use(operatorsOnly);

  /** A group that is gone: somebody has decided on it, or its number was never one. */
  const decided = async (c: Context): Promise<Response> => {
    const id = Number(c.req.param('id'));
    const by = (await growth.changes()).find(({ gaps, undone }) => undone === null && gaps.includes(id));
    return by === undefined ? gone(c) : c.html(decidedPage(drawn(c), by, growth.knowledge()), 409);
  };

  app.get('/', async (c) => c.html(groupsPage(drawn(c), await growth.groups(), growth.knowledge())));
  app.get('/group/:id', async (c) => {
    const group = await growth.group(Number(c.req.param('id')));
    if (group === null) return decided(c);
    // What was tried before is to be changed: its words are still there.
    const draft = growth.decisionTried(c.req.query('trial') ?? '');
    return c.html(groupPage(drawn(c), group, growth.knowledge(), freshKey(), { problems: [], draft }));
  });
  app.get('/trial/:key', (c) => {
    const view = growth.trial(c.req.param('key'));
    return view === null
      ? gone(c)
      : c.html(trialPage(drawn(c), c.req.param('key'), view, growth.knowledge(), freshKey()));
  });
  app.get('/trial/:key/events', (c) => {
    const key = c.req.param('key');
    const shown = { session: c.get('session'), trial: key, once: freshKey() };
    return live(c, world, async () => {
      const view = growth.trial(key);
      if (view === null) return null;
      return String(<TrialParts {...shown} view={view} knowledge={growth.knowledge()} />);
    });
  });
  app.get('/changes', async (c) =>
    c.html(changesPage(drawn(c), await growth.changes(), growth.knowledge(), freshKey())),
  );
  app.route('/graph', pictureRoutes(growth, picture, drawn));
  app.get('/figures', async (c) => {
    const [rows, groups, effects] = [await growth.figures(), await growth.groups(), await growth.effects()];
    return c.html(figuresPage(drawn(c), { rows, groups, effects }, growth.knowledge()));
  });
  app.get('/figures.csv', async (c) =>
    c.body(figuresCsv(await growth.figures()), 200, {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': 'attachment; filename="figures.csv"',
    }),
  );
  const faults = async (c: Context, hindered: string | null) =>
    faultsPage(drawn(c), await world.priors.report(), growth.knowledge(), freshKey(), hindered);
  app.get('/faults', async (c) => c.html(await faults(c, null)));
  const look = (c: Context): Theme => (c.req.query('look') === 'dark' ? 'dark' : 'light');
  app.get('/drawings', (c) => c.html(drawingsPage(drawn(c), world.drawings(), look(c))));
  app.get('/drawings/:name', (c) => {
    const drawings = world.drawings();
    const drawing = drawings.find(({ name }) => name === c.req.param('name'));
    return drawing === undefined
      ? c.text('There is no such drawing.\n', 404)
      : c.html(drawingPage(drawn(c), drawings, drawing, look(c)));
  });
  app.get('/thin', (c) => c.html(thinPage(drawn(c), thinIn(growth.knowledge()), growth.knowledge())));

  /** One press: the form must be this session's own; one that is pressed twice goes to `again`. */
  const deed =
    (again: (c: Context) => string, act: (c: Context, session: Session, form: Form) => Promise<Response>) =>
    async (c: Context): Promise<Response> => {
      const read = await readForm(c);
      const session = c.get('session');
      if (read.kind === 'unreadable') return c.text('That could not be read. Send it again from the page.\n', 400);
      if (!ownForm(session, read.form.text('csrf')))
        return c.text('This form is not from your own page. Open the page again.\n', 403);
      return firstTime(read.form.text('key')) ? act(c, session, read.form) : c.redirect(again(c), 303);
    };

  app.post(
    '/group/:id/try',
    deed(
      () => HOME,
      async (c, _session, form) => {
        const group = await growth.group(Number(c.req.param('id')));
        if (group === null) return decided(c);
        const decision = decisionIn(form);
        const begun =
          decision === null
            ? { kind: 'refused' as const, problems: ['the form asked for nothing'] }
            : growth.begin(decision, group);
        if (begun.kind === 'begun') return c.redirect(`${HOME}/trial/${begun.key}`, 303);
        return c.html(
          groupPage(drawn(c), group, growth.knowledge(), freshKey(), { problems: begun.problems, draft: decision }),
          422,
        );
      },
    ),
  );
  app.post(
    '/trial/:key/publish',
    deed(
      () => `${HOME}/changes`,
      async (c, session, form) => {
        const key = c.req.param('key') ?? '';
        const evenIfWorse = form.text('even-if-worse') === 'yes';
        const tell = form.text('tell') === 'yes';
        const how = { by: session.name, why: form.text('why').trim().slice(0, 200), evenIfWorse, tell };
        const published = await growth.publish(key, how);
        if (published.kind === 'published') return c.redirect(`${HOME}/changes`, 303);
        const view = growth.trial(key);
        const back = view?.state === 'done' ? `${HOME}/group/${view.group.id}?trial=${key}` : HOME;
        return c.html(hinderedPage(drawn(c), published, back), 409);
      },
    ),
  );
  app.post(
    '/faults/:symptom/:van/accept',
    deed(
      () => `${HOME}/faults`,
      async (c, session) => {
        const { symptom = '', van = '' } = c.req.param();
        const hindered = await world.priors.accept(symptom, van, session.name);
        return hindered === null ? c.redirect(`${HOME}/faults`, 303) : c.html(await faults(c, hindered), 409);
      },
    ),
  );
  app.post(
    '/changes/:id/undo',
    deed(
      () => `${HOME}/changes`,
      async (c, session) => {
        const undone = await growth.undo(Number(c.req.param('id')), session.name);
        if (undone.kind === 'undone') return c.redirect(`${HOME}/changes`, 303);
        return c.html(hinderedPage(drawn(c), undone, `${HOME}/changes`), 409);
      },
    ),
  );
  return app;
}

const operatorsOnly: MiddlewareHandler = async (c, next) => {
  if (c.get('session').role !== 'operator') return c.text('Only an operator may teach the bot.\n', 403);
  await next();
  return undefined;
};

function gone(c: Context): Response {
  return c.text('That is settled, or never was. Look at what is still unanswered.\n', 404);
}
