import { expect, it } from 'vitest';
import { askedAt, reasonView } from '../../../src/chat/slack/reason-view.js';
import { readModal } from '../../support/slack-stand-in/check-view.js';

const ASKED = { line: 'release 501 j1', channel: 'C0HOME', messageTs: '1.2', thread: null, ephemeral: false };

it('the form carries the button it was opened from, and asks in the reader\'s language', () => {
  const view = reasonView(ASKED, { language: 'de' });
  expect(readModal(view)).not.toBeNull();
  expect([view.title.text, askedAt(view.private_metadata ?? '')]).toEqual(['Weitergehen', ASKED]);
});

it.each(['', '{}', 'not json', '{"line":""}'])('a form of somebody else asks for nothing: %j', (metadata) => {
  expect(askedAt(metadata)).toBeNull();
});
