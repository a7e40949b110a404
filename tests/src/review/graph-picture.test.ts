import { describe, expect, it } from 'vitest';
import { pictureOf } from '../../../src/review/graph-picture.ts';
import { heatOf } from '../../../src/review/heat.ts';
import { saidIn } from '../../../src/review/said-in.ts';
import { smallGraphFiles, smallKnowledge } from '../../helpers/small-graph.ts';

const FRIDGE = 'systems/fridge.yaml';

describe('the picture of a graph', () => {
  it('puts every part and every topic in its system’s room, no two in one place', () => {
    const knowledge = smallKnowledge();
    const { nodes, rooms } = pictureOf(knowledge);
    expect(nodes.map(({ key }) => key).sort()).toEqual(
      [
        ...[...knowledge.parts.keys()].map((id) => `part:${id}`),
        ...[...knowledge.topics.keys()].map((id) => `topic:${id}`),
      ].sort(),
    );
    expect(new Set(nodes.map(({ x, y }) => `${x} ${y}`)).size).toBe(nodes.length);
    for (const { system, x, y } of nodes) {
      const room = rooms.find((each) => each.system === system);
      if (room === undefined) throw new Error(`no room ${system}`);
      expect(x > room.x && x < room.x + room.wide && y < room.y && y > room.y - room.high).toBe(true);
    }
  });

  it('links a topic to its parts and a part to what it belongs to', () => {
    const { links } = pictureOf(smallKnowledge());
    expect(links).toContainEqual({ from: 'part:oven', to: 'topic:oven-use', near: true });
    expect(links).toContainEqual({ from: 'part:fridge-buttons', to: 'part:fridge-light', near: true });
  });

  it('leaves everything where it was when a topic comes into a room that has a place for it', () => {
    const before = pictureOf(smallKnowledge());
    const more = `
  hours-pool:
    kind: fact
    title: Is there a pool?
    caution: none
    pass: never
    answer: { first: No. }
    wordings: { ann: [swimming] }
`;
    const text = (smallGraphFiles().find(({ path }) => path === FRIDGE)?.text ?? '') + more.slice(1);
    const after = pictureOf(smallKnowledge({ [FRIDGE]: text }));
    expect(after.rooms).toEqual(before.rooms);
    expect(after.nodes.filter(({ key }) => key !== 'topic:hours-pool')).toEqual(before.nodes);
  });
});

describe('the heat of topics', () => {
  it('counts a question once, whether it was answered or not, and each failure', () => {
    const walk = {
      kind: 'walk-ended',
      symptom: 'fridge-light-dead',
      van: 'buttercup',
      cause: null,
      tried: [],
    } as const;
    const heat = heatOf(
      [
        { kind: 'answered', topic: 'oven-use', probability: 1 },
        { ...walk, end: 'passed' },
        { ...walk, end: 'fixed' },
      ],
      [
        { nearest: ['oven-use'], why: 'did-not-help' },
        { nearest: ['oven-use', 'fridge-modes'], why: 'no-such-topic' },
        { nearest: [], why: 'no-such-topic' },
      ],
    );
    expect([...heat]).toEqual([
      ['oven-use', { asked: 2, failed: 2 }],
      ['fridge-light-dead', { asked: 0, failed: 1 }],
    ]);
  });
});

describe('a text of the graph for the operator', () => {
  it('has the van’s own values, or every way it can be put', () => {
    const knowledge = smallKnowledge();
    const says = [{ when: 'fridge-dial', say: 'Turn it.' }, 'Fuse {fridge.fuse}.'];
    expect(saidIn(says, knowledge.vans.get('buttercup') ?? null, knowledge)).toEqual(['Fuse F6.']);
    expect(saidIn(says, knowledge.vans.get('daisy') ?? null, knowledge)).toEqual(['Turn it.']);
    expect(saidIn(says, null, knowledge)).toEqual(['Turn it.', 'Fuse {fridge.fuse}.']);
  });
});
