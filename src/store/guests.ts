import type Database from 'better-sqlite3';
import type { BookTransaction } from '../clerk/ports.js';
import { personId } from '../repair/ids.js';

/** People the shop's list does not know, in the order of their ids. A name that stands already is not written again. */
export function openGuests(db: Database.Database): Pick<BookTransaction, 'guests' | 'saveGuest'> {
  const all = db.prepare<[], { person: string; name: string }>('SELECT person, name FROM guest ORDER BY person');
  const save = db.prepare<[string, string]>(
    'INSERT INTO guest (person, name) VALUES (?, ?) ON CONFLICT (person) DO UPDATE SET name = excluded.name WHERE name <> excluded.name',
  );
  return {
    guests: () => all.all().map(({ person, name }) => ({ id: personId(person), name })),
    saveGuest: (id, name) => {
      save.run(id, name);
    },
  };
}
