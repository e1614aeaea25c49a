import { z } from 'zod';

const button = z.object({
  type: z.literal('button'),
  action_id: z.string().min(1).max(255),
  text: z.object({ type: z.literal('plain_text'), text: z.string().min(1).max(75), emoji: z.boolean().optional() }),
  value: z.string().min(1).max(2000),
  accessibility_label: z.string().max(75),
});
const markup = z.object({ type: z.literal('mrkdwn'), text: z.string().min(1).max(3000) });

export const blockSchema = z.discriminatedUnion('type', [
  z.object({ type: z.literal('section'), text: markup }),
  z.object({ type: z.literal('context'), elements: z.array(markup).min(1).max(10) }),
  z.object({
    type: z.literal('actions'),
    elements: z.array(button).min(1).max(25).refine((elements) => new Set(elements.map((one) => one.action_id)).size === elements.length),
  }),
]);

const blocksSchema = z.array(blockSchema).max(50);

/** The platform's own checks of a message, as far as the program can run into them: an error word, or null. */
export function checkPost(args: Readonly<Record<string, string>>, blocks: unknown): string | null {
  if ((args['text'] ?? '').trim() === '') return 'no_text';
  if (args['link_names'] !== undefined || args['parse'] !== undefined) return 'invalid_arguments';
  return blocksSchema.safeParse(blocks).success ? null : 'invalid_blocks';
}
