import type { Fact, FactRecord } from '../repair/facts.js';
import { entryNo, type PersonId } from '../repair/ids.js';
import { readFact, writeFact } from './fact-schema.js';
import type { Journal } from './journal.js';
import type { MemoryState } from './memory-state.js';

/** Facts go through the same text as in the file, so that what cannot be stored is refused here too. */
export function memoryJournal(now: () => MemoryState): Journal {
  let handedOut = 0;
  const ofEntry = (entry: number): FactRecord[] => now().facts.filter((record) => record.entry === entry);

  const checked = (record: FactRecord): FactRecord => {
    const { fact } = record;
    if (fact.type === 'undone' && ofEntry(fact.entry).length === 0) throw new Error(`Entry ${fact.entry} is not in the book, so it cannot be undone.`);
    return { ...record, fact: readFact(writeFact(fact), `A fact of entry ${record.entry}`) };
  };

  const deedsOf = (by: PersonId): FactRecord[] => {
    const undone = new Set(now().facts.flatMap(({ fact }) => (fact.type === 'undone' ? [fact.entry] : [])));
    return now().facts.filter((record) => record.by === by && isDeed(record) && !undone.has(record.entry));
  };

  return {
    begin: () => {
      handedOut = 0;
    },
    nextEntry: () => {
      handedOut = now().facts.reduce((highest, { entry }) => Math.max(highest, entry), handedOut) + 1;
      return entryNo(handedOut);
    },
    append: (facts) => {
      for (const record of facts) now().facts.push(checked(record));
    },
    factsOf: (job) => now().facts.filter((record) => record.job === job),
    shopFacts: (limit) => now().facts.filter((record) => record.job === null).reverse().slice(0, limit).reverse(),
    adoptions: () => now().facts.filter(({ entry, fact }) => isAdoption(fact) && !now().facts.some((other) => other.fact.type === 'undone' && other.fact.entry === entry)),
    factsOfEntry: (entry) => ofEntry(entry),
    factsBy: (by, limit) => deedsOf(by).reverse().sort((one, other) => other.entry - one.entry).slice(0, limit),
    lastEntryOf: (by) => {
      const undone = new Set(now().facts.flatMap(({ fact }) => (fact.type === 'undone' ? [fact.entry] : [])));
      const mine = now().facts.filter((record) => record.by === by && isDeed(record) && !undone.has(record.entry) && ofEntry(record.entry)[0]?.by === by);
      if (mine.length === 0) return null;
      const entry = entryNo(Math.max(...mine.map((record) => record.entry)));
      return { entry, facts: ofEntry(entry) };
    },
  };
}

/** Something a person did or measured, and can therefore take back. */
const isDeed = ({ fact }: FactRecord): boolean => fact.type !== 'undone' && fact.type !== 'reminder-raised' && fact.type !== 'bell';

const isAdoption = ({ type }: Fact): boolean => type === 'adopted' || type === 'adoption-asked' || type === 'adoption-refused';
