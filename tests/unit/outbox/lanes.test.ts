import { describe, expect, it } from 'vitest';
import type { DeliveryTarget } from '../../../src/clerk/message.js';
import { laneOf } from '../../../src/clerk/lane-of.js';
import { Lanes } from '../../../src/outbox/lanes.js';
import { jobNo } from '../../../src/repair/ids.js';

const TARGETS: readonly DeliveryTarget[] = [
  { kind: 'home-channel' },
  { kind: 'job-thread', job: jobNo('501') },
  { kind: 'channel', channel: 'C1', thread: '1.1' },
  { kind: 'only-for', channel: 'D1', thread: null, user: 'U1' },
];

describe('laneOf', () => {
  it('puts everything for the home channel into one lane', () => {
    expect(TARGETS.map(laneOf)).toEqual(['home', 'home', 'C1', 'D1']);
  });
});

describe('Lanes', () => {
  it('are free until somebody says otherwise', () => {
    expect(new Lanes().freeAt('home')).toBe(0);
  });

  it('are never free while busy, and rest afterwards', () => {
    const lanes = new Lanes();
    lanes.occupy('home');
    lanes.rest('home', 500);
    expect([lanes.freeAt('home'), lanes.freeAt('C1')]).toEqual([Infinity, 0]);
    lanes.release('home');
    expect(lanes.freeAt('home')).toBe(500);
  });

  it('keep the longer rest', () => {
    const lanes = new Lanes();
    lanes.rest('home', 900);
    lanes.rest('home', 500);
    expect(lanes.freeAt('home')).toBe(900);
  });
});
