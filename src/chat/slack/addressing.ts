import type { About, Delivery, DeliveryTarget, Post } from '../../clerk/message.js';
import type { Addressing } from '../../clerk/ports.js';
import type { PersonId } from '../../repair/ids.js';
import { nameOf } from '../../repair/people.js';
import type { Shop } from '../../repair/shop.js';
import type { Answer } from '../../reply/answer.js';
import { replyDeliveries } from './reply-deliveries.js';

/** Matters of minutes or of harm overtake the rest of their lane. */
const URGENT: ReadonlySet<About['kind']> = new Set(['open-limit', 'safety', 'decision']);
/** A chat id always carries a digit; a first name typed on the local page does not. */
const CHAT_ID = /^[UW](?=[A-Z0-9]*\d)[A-Z0-9]+$/;

/** Where the clerk's words go on the platform. */
export function slackAddressing(shop: Shop): Addressing {
  return {
    post: (post, about) => [postDelivery(shop, post, about)],
    reply: replyDeliveries,
    answered: (post, answer, at) => {
      const { key, mention } = postDelivery(shop, post, post.about);
      return [{ key: `done:${key}`, chat: 'slack', target: { kind: 'edit', of: key }, urgent: false, mention, answer: named(shop, post, mention, answer), createdAt: at }];
    },
    replied: ({ key }, answer, at) => [{ key: `done:${key}`, chat: 'slack', target: { kind: 'edit', of: key }, urgent: false, mention: null, answer, createdAt: at }],
    sheet: (job, answer, change, at) => [{ key: `sheet:${job}:${change}`, chat: 'slack', target: { kind: 'thread-head', job }, urgent: false, mention: null, answer, createdAt: at }],
  };
}

function postDelivery(shop: Shop, post: Post, about: About): Delivery {
  const mention = post.to === 'channel' ? null : chatIdOf(shop, post.to);
  return {
    key: `post:${post.key}`,
    chat: 'slack',
    target: postTarget(post, about),
    urgent: URGENT.has(about.kind),
    mention,
    answer: named(shop, post, mention, post.answer),
    createdAt: post.at,
  };
}

/** Whoever cannot be mentioned is named, so that everybody sees whose it is. */
function named(shop: Shop, { to }: Post, mention: string | null, answer: Answer): Answer {
  if (to === 'channel' || mention !== null) return answer;
  const [first = [], ...rest] = answer.lines;
  return { ...answer, lines: [[{ kind: 'text', text: `${nameOf(shop, to)}: ` }, ...first], ...rest] };
}

function postTarget(post: Post, about: About): DeliveryTarget {
  if (post.to === 'channel' || about.job === null) return { kind: 'home-channel' };
  return { kind: 'job-thread', job: about.job };
}

/** People outside shop.yaml are known by their chat id in small letters. */
function chatIdOf(shop: Shop, person: PersonId): string | null {
  const listed = shop.people.find((one) => one.id === person);
  if (listed !== undefined) return listed.chatId;
  const chatId = person.toUpperCase();
  return CHAT_ID.test(chatId) ? chatId : null;
}
