import { describe, expect, it } from 'vitest';
import { createCounters } from '../../../adapters/http/counters.ts';

describe('counters', () => {
  it('give every label set a row of its own, sorted, after help and type', () => {
    const counters = createCounters();
    counters.describe('messages_total', 'Messages taken in');
    counters.count('messages_total', { channel: 'web' });
    counters.count('messages_total', { channel: 'telegram' }, 3);
    counters.count('messages_total', { channel: 'web' });
    expect(counters.text()).toBe(
      [
        '# HELP messages_total Messages taken in',
        '# TYPE messages_total counter',
        'messages_total{channel="telegram"} 3',
        'messages_total{channel="web"} 2',
        '',
      ].join('\n'),
    );
  });

  it('read gauges at the time of asking', () => {
    const counters = createCounters();
    let open = 1;
    counters.gauge('streams', 'Open streams', () => open);
    open = 5;
    expect(counters.text()).toContain('streams 5\n');
  });

  // Escapes as the text exposition format 0.0.4 lists them (prometheus.io, 'Text-based format').
  it('escape quotes, backslashes and line ends in labels', () => {
    const counters = createCounters();
    counters.count('odd', { text: 'a"b\\c\nd' });
    expect(counters.text()).toContain('odd{text="a\\"b\\\\c\\nd"} 1');
  });

  it('refuse a name that the format has no room for', () => {
    expect(() => createCounters().count('no-dashes')).toThrow(/letters, digits and underscores/);
  });
});
