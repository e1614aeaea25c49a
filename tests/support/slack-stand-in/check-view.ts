import { z } from 'zod';
import { blockSchema } from './check-post.js';

const plain = (longest: number) => z.object({ type: z.literal('plain_text'), text: z.string().min(1).max(longest), emoji: z.boolean().optional() });
const option = z.object({ text: plain(75), value: z.string().min(1).max(75) });

const element = z.discriminatedUnion('type', [
  z.object({ type: z.literal('plain_text_input'), action_id: z.string().min(1), placeholder: plain(150).optional(), initial_value: z.string().max(3000).optional(), max_length: z.int().min(1).max(3000).optional() }),
  z.object({ type: z.literal('static_select'), action_id: z.string().min(1), options: z.array(option).min(1).max(100), initial_option: option.optional() }),
  z.object({ type: z.literal('radio_buttons'), action_id: z.string().min(1), options: z.array(option).min(1).max(10), initial_option: option.optional() }),
]);

const input = z.object({
  type: z.literal('input'),
  block_id: z.string().min(1).max(255),
  label: plain(2000),
  hint: plain(2000).optional(),
  optional: z.boolean().optional(),
  dispatch_action: z.boolean().optional(),
  element,
});
export type InputBlock = z.infer<typeof input>;

const isUnique = (ids: readonly string[]): boolean => new Set(ids).size === ids.length;

const modal = z.object({
  type: z.literal('modal'),
  callback_id: z.string().min(1).max(255),
  title: plain(24),
  submit: plain(24),
  close: plain(24),
  private_metadata: z.string().max(3000).optional(),
  blocks: z.array(input).min(1).max(100).refine((blocks) => isUnique(blocks.map((one) => one.block_id))),
});
export type ModalView = z.infer<typeof modal>;

const home = z.object({ type: z.literal('home'), blocks: z.array(blockSchema).min(1).max(100) });
export type HomeView = z.infer<typeof home>;

/** The platform's own checks of a view, as far as the program can run into them; null: it is not taken. */
export const readModal = (view: unknown): ModalView | null => modal.safeParse(view).data ?? null;
export const readHome = (view: unknown): HomeView | null => home.safeParse(view).data ?? null;
