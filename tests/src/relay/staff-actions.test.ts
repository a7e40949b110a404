import { describe, expect, it } from 'vitest';
import { giveBack, newThread, putRight, staffSays, type Thread } from '../../../src/index.ts';

const NOON = Date.parse('2027-07-15T11:00:00Z');
const thread = newThread({ id: 't', channel: 'web', address: 'a' }, NOON);

describe('putting right what staff said', () => {
  const said = staffSays(thread, 'Gethin', 'The red tap', [{ kind: 'photo', file: 'p' }], NOON);
  if (said.kind !== 'done') throw new Error('nobody had the thread');
  const reply = said.replies[0];
  if (reply === undefined) throw new Error('nothing was said');

  it('takes the place of the line, whoever has the thread, and takes it from nobody', () => {
    const held = { ...said.thread, keeper: 'staff' as const, keeperName: 'Nessa' };
    const right = putRight(held, 'Gethin', { id: 7, reply }, 'The blue tap', []);
    expect(right).toMatchObject({
      kind: 'done',
      thread: { keeper: 'staff', keeperName: 'Nessa' },
      replies: [{ from: 'Gethin', putsRight: 7, blocks: [{ kind: 'line', text: 'The blue tap' }] }],
      events: [{ kind: 'staff-put-right', by: 'Gethin', text: 'The blue tap', line: 7 }],
    });
  });

  it('lets the next brief know the new words alone', () => {
    const right = putRight(said.thread, 'Gethin', { id: 7, reply }, 'The blue tap', []);
    expect(right.kind === 'done' && right.thread.memory.tried).toEqual(['Gethin said: “The blue tap”']);
  });
});

describe('giving a thread back', () => {
  const held: Thread = {
    ...newThread({ id: 't', channel: 'test', address: 'a' }, 0),
    keeper: 'staff',
    keeperName: 'Gethin',
  };

  it('asks once whether all is well, however often it is pressed', () => {
    const first = giveBack(held, 'Gethin', 1);
    if (first.kind !== 'done') throw new Error(first.kind);
    expect(first.replies).toHaveLength(1);
    expect(giveBack(first.thread, 'Gethin', 2)).toEqual({
      kind: 'done',
      thread: first.thread,
      replies: [],
      events: [],
    });
  });
});
