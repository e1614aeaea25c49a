import type Database from 'better-sqlite3';
import type { BookTransaction } from '../clerk/ports.js';
import { instant } from '../cure/units.js';
import type { FactRecord } from '../repair/facts.js';
import { entryNo, jobNo, personId, type EntryNo } from '../repair/ids.js';
import { FIRST_LINK, linkOf, type ChainedRow } from './chain.js';
import { readFact, writeFact } from './fact-schema.js';

interface FactRow {
  readonly seq: number;
  readonly entry: number;
  readonly job: string | null;
  readonly happened_at: number;
  readonly entered_at: number;
  readonly by_whom: string;
  readonly body: string;
}

export interface Journal extends Pick<BookTransaction, 'nextEntry' | 'append' | 'factsOf' | 'shopFacts' | 'adoptions' | 'lastEntryOf' | 'factsOfEntry' | 'factsBy'> {
  /** A new transaction begins: numbers handed out in one that wrote nothing are free again. */
  readonly begin: () => void;
}

const COLUMNS = 'seq, entry, job, happened_at, entered_at, by_whom, body';

/** Facts are only ever added; an undo is one more fact. */
export function openJournal(db: Database.Database): Journal {
  const insert = db.prepare<[ChainedRow & { readonly link: string }]>(
    'INSERT INTO fact (seq, entry, job, happened_at, entered_at, by_whom, type, undoes, body, link) VALUES ($seq, $entry, $job, $happened_at, $entered_at, $by_whom, $type, $undoes, $body, $link)',
  );
  const newest = db.prepare<[], { seq: number; link: string }>('SELECT seq, link FROM fact ORDER BY seq DESC LIMIT 1');
  const highest = db.prepare<[], { entry: number | null }>('SELECT max(entry) AS entry FROM fact');
  const ofJob = db.prepare<[string], FactRow>(`SELECT ${COLUMNS} FROM fact WHERE job = ? ORDER BY seq`);
  const ofShop = db.prepare<[number], FactRow>(`SELECT ${COLUMNS} FROM fact WHERE job IS NULL ORDER BY seq DESC LIMIT ?`);
  const adoptions = db.prepare<[], FactRow>(
    `SELECT ${COLUMNS} FROM fact AS f
     WHERE job IS NULL AND type IN ('adopted', 'adoption-asked', 'adoption-refused') AND NOT EXISTS (SELECT 1 FROM fact AS u WHERE u.undoes = f.entry)
     ORDER BY seq`,
  );
  const ofEntry = db.prepare<[number], FactRow>(`SELECT ${COLUMNS} FROM fact WHERE entry = ? ORDER BY seq`);
  const by = db.prepare<[string, number], FactRow>(
    `SELECT ${COLUMNS} FROM fact AS f
     WHERE by_whom = ? AND type NOT IN ('undone', 'reminder-raised', 'bell')
       AND NOT EXISTS (SELECT 1 FROM fact AS u WHERE u.undoes = f.entry)
     ORDER BY entry DESC, seq DESC LIMIT ?`,
  );
  const lastOf = db.prepare<[string], { entry: number }>(
    `SELECT entry FROM fact AS f
     WHERE by_whom = ? AND type NOT IN ('undone', 'reminder-raised', 'bell')
       AND NOT EXISTS (SELECT 1 FROM fact AS o WHERE o.entry = f.entry AND o.seq < f.seq AND o.by_whom <> f.by_whom)
       AND NOT EXISTS (SELECT 1 FROM fact AS u WHERE u.undoes = f.entry)
     ORDER BY entry DESC LIMIT 1`,
  );

  let handedOut = 0;
  const factsOfEntry = (entry: EntryNo): FactRecord[] => ofEntry.all(entry).map(recordOf);

  const undoneEntry = (record: FactRecord): number | null => {
    if (record.fact.type !== 'undone') return null;
    if (ofEntry.get(record.fact.entry) === undefined) throw new Error(`Entry ${record.fact.entry} is not in the book, so it cannot be undone.`);
    return record.fact.entry;
  };

  return {
    begin: () => {
      handedOut = 0;
    },
    nextEntry: () => {
      handedOut = Math.max(handedOut, highest.get()?.entry ?? 0) + 1;
      return entryNo(handedOut);
    },
    append: (facts) => {
      let { seq, link } = newest.get() ?? { seq: 0, link: FIRST_LINK };
      for (const record of facts) {
        const { entry, job, happenedAt, enteredAt, by, fact } = record;
        seq += 1;
        const row = { seq, entry, job, happened_at: happenedAt, entered_at: enteredAt, by_whom: by, type: fact.type, undoes: undoneEntry(record), body: writeFact(fact) };
        link = linkOf(link, row);
        insert.run({ ...row, link });
      }
    },
    factsOf: (job) => ofJob.all(job).map(recordOf),
    shopFacts: (limit) => ofShop.all(limit).reverse().map(recordOf),
    adoptions: () => adoptions.all().map(recordOf),
    factsOfEntry,
    factsBy: (person, limit) => by.all(person, limit).map(recordOf),
    lastEntryOf: (by) => {
      const last = lastOf.get(by);
      if (last === undefined) return null;
      const entry = entryNo(last.entry);
      return { entry, facts: factsOfEntry(entry) };
    },
  };
}

const recordOf = (row: FactRow): FactRecord => ({
  entry: entryNo(row.entry),
  job: row.job === null ? null : jobNo(row.job),
  happenedAt: instant(row.happened_at),
  enteredAt: instant(row.entered_at),
  by: personId(row.by_whom),
  fact: readFact(row.body, `Fact ${row.seq} (entry ${row.entry})`),
});
