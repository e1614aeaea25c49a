import { z } from 'zod';
import { closedObject, expects } from '../cure/closed-object.js';
import { lampName, personId, type LampName } from '../repair/ids.js';
import { LANGUAGES, ROLES, type Person } from '../repair/shop.js';

const ID = /^[A-Za-z][A-Za-z0-9-]*$/;
const LAMP = /^[A-Za-z][A-Za-z0-9]{0,5}$/;
const PAD_NUMBER = /^[1-9]$/;
const CHAT_ID = /^[UW][A-Z0-9]+$/;

const personField = closedObject({
  name: z.string({ error: expects('the name people use') }).trim().min(1, { error: 'must not be empty' }).max(40, { error: 'must have at most 40 characters' }),
  role: z.enum(ROLES, { error: expects(`one of ${ROLES.join(', ')}`) }),
  chat: z.string({ error: expects('a member id') }).regex(CHAT_ID, { error: 'must be the member id from the chat profile, such as U02ABCDEF, not a name' }).nullish(),
  language: z.enum(LANGUAGES, { error: expects(`one of ${LANGUAGES.join(', ')}`) }).nullish(),
  unit: z.enum(['C', 'F'], { error: expects('C or F') }).nullish(),
});

/** A person as written; without a language the shop's is theirs. */
export type PersonWritten = Omit<Person, 'language'> & { readonly language: Person['language'] | null };

/** People by their id. Names and chat ids are unique, and somebody is foreman: only a foreman can release a hold. */
export const peopleField = z.record(z.string(), personField, { error: expects('people, each an id with name and role') }).transform((plain, context): readonly PersonWritten[] => {
  const refuse = (path: string[], message: string) => {
    context.addIssue({ code: 'custom', path, message });
  };
  const people: PersonWritten[] = [];
  for (const [key, { name, role, chat, language, unit }] of Object.entries(plain)) {
    const person: PersonWritten = { id: personId(key), name, role, chatId: chat ?? null, language: language ?? null, unit: unit ?? null };
    if (!ID.test(key)) refuse([key], 'must be an id that begins with a letter and holds letters, digits and hyphens only');
    if (people.some((other) => other.id === person.id)) refuse([key], 'differs from another id only in capitals');
    if (people.some((other) => other.name.toLowerCase() === name.toLowerCase())) refuse([key, 'name'], `${name} is the name of somebody else already`);
    if (people.some((other) => other.chatId !== null && other.chatId === person.chatId)) refuse([key, 'chat'], 'is the member id of somebody else already');
    people.push(person);
  }
  if (!people.some((person) => person.role === 'foreman')) refuse([], 'has no foreman, so a hold could never be released: give one person the role foreman');
  return people;
});

/** Lamps by the short names painted on them. */
export const lampsField = z
  .array(z.string({ error: expects('a short name such as A or L1') }).regex(LAMP, { error: 'must be a letter, then at most five letters or digits' }), { error: expects('a list of lamp names such as [A, B]') })
  .transform(namesOnce);

/** Heating pads. A number of two digits would be read as a temperature. */
export const padsField = z
  .array(
    z.union([z.string(), z.number()], { error: expects('a number from 1 to 9 or a short name such as M1') })
      .transform((name) => String(name).trim())
      .refine((name) => PAD_NUMBER.test(name) || LAMP.test(name), { error: 'must be a number from 1 to 9, or a letter and at most five letters or digits' }),
    { error: expects('a list of pad names such as [1, 2]') },
  )
  .transform(namesOnce);

function namesOnce(plain: readonly string[], context: z.RefinementCtx): readonly LampName[] {
  const names = plain.map(lampName);
  for (const [index, name] of names.entries()) {
    if (names.indexOf(name) < index) context.addIssue({ code: 'custom', path: [index], message: `${name} stands in the list already` });
  }
  return names;
}
