import type { About, Delivery, DeliveryTarget, Post } from '../../clerk/message.js';
import type { Addressing } from '../../clerk/ports.js';
import type { PersonId } from '../../repair/ids.js';
import type { Shop } from '../../repair/shop.js';
import { replyDeliveries } from './reply-deliveries.js';

/** Matters of minutes or of harm overtake the rest of their lane. */
const URGENT: ReadonlySet<About['kind']> = new Set(['open-limit', 'safety', 'decision']);
/** A chat id always carries a digit; a first name typed on the local page does not. */
const CHAT_ID = /^[UW](?=[A-Z0-9]*\d)[A-Z0-9]+$/;

/** Where the clerk's words go on the platform. */
export function slackAddressing(shop: Shop): Addressing {
  return { post: (post, about) => [postDelivery(shop, post, about)], reply: replyDeliveries };
}

function postDelivery(shop: Shop, post: Post, about: About): Delivery {
  return {
    key: `post:${post.key}`,
    chat: 'slack',
    target: postTarget(post, about),
    urgent: URGENT.has(about.kind),
    mention: post.to === 'channel' ? null : chatIdOf(shop, post.to),
    answer: post.answer,
    createdAt: post.at,
  };
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
