import { type Context, Hono } from 'hono';
import { compress } from 'hono/compress';
import { type GraphPicture, type Knowledge, pictureOf } from '../../src/index.ts';
import type { Drawn } from './growth-frame.tsx';
import { type Looking, picturePage } from './growth-picture-page.tsx';
import { partPage, topicPage } from './growth-thing-page.tsx';
import type { Growth } from './growth-world.ts';
import { pictureData } from './picture-data.ts';

/** The graph as a picture, as a list, and one page for each part and answer. Operators only: mounted behind their check. */
export function pictureRoutes(growth: Growth, script: string, drawn: (c: Context) => Drawn): Hono {
  const app = new Hono();
  const pictures = new WeakMap<Knowledge, GraphPicture>();
  const pictureFor = (knowledge: Knowledge): GraphPicture => {
    const picture = pictures.get(knowledge) ?? pictureOf(knowledge);
    pictures.set(knowledge, picture);
    return picture;
  };
  const seenBy = async (c: Context) => {
    const knowledge = growth.knowledge();
    const van = knowledge.vans.get(c.req.query('van') ?? '') ?? null;
    const looking: Looking = { van, by: c.req.query('heat') === 'failed' ? 'failed' : 'asked' };
    return { knowledge, looking, heat: await growth.heat(van?.id ?? null) };
  };
  const dataOf = ({ knowledge, looking, heat }: Awaited<ReturnType<typeof seenBy>>) =>
    pictureData(pictureFor(knowledge), looking.van, heat);

  // Packed, which other pages must not be: these hold no secret, only what the graph says and counts.
  app.use(compress());
  app.get('/', async (c) => {
    const seen = await seenBy(c);
    return c.html(picturePage(drawn(c), script, dataOf(seen), seen.looking, seen.knowledge));
  });
  app.get('/data', async (c) => c.json(dataOf(await seenBy(c))));
  app.get('/part/:id', async (c) => {
    const seen = await seenBy(c);
    const part = seen.knowledge.parts.get(c.req.param('id'));
    return part === undefined ? nothing(c) : c.html(partPage(drawn(c), part, seen));
  });
  app.get('/topic/:id', async (c) => {
    const seen = await seenBy(c);
    const topic = seen.knowledge.topics.get(c.req.param('id'));
    return topic === undefined ? nothing(c) : c.html(topicPage(drawn(c), topic, seen));
  });
  return app;
}

function nothing(c: Context): Response {
  return c.text('The graph has no such thing. Look at it as it is now.\n', 404);
}
