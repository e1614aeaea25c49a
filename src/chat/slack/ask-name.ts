import { z } from 'zod';
import type { webApi } from '@slack/bolt';

const profileSchema = z.object({
  user: z.object({
    real_name: z.string().optional(),
    name: z.string().optional(),
    profile: z.object({ display_name: z.string().optional() }).optional(),
  }),
});

/** The name people see in the platform's profile, or null when it is empty; rejects when the platform does not tell. */
export async function askName(client: webApi.WebClient, chatId: string): Promise<string | null> {
  const { user } = profileSchema.parse(await client.users.info({ user: chatId }));
  const names = [user.profile?.display_name, user.real_name, user.name];
  return names.find((name) => name !== undefined && name.trim() !== '') ?? null;
}
