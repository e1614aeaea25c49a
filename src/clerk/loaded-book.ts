import type { AirReading } from '../cure/air.js';
import { airReadings, type Book } from '../repair/book.js';
import type { FactRecord } from '../repair/facts.js';
import { foldJob, type Job } from '../repair/job.js';
import type { JobNo } from '../repair/ids.js';
import { peopleFacts, type PeopleFacts } from '../repair/people-facts.js';
import type { BookTransaction } from './ports.js';

/** Shop facts looked back on: more than a week of air readings and bells. */
const SHOP_FACTS = 400;

/** Folded jobs, kept between messages; a job that was written to is folded anew. */
export class JobShelf {
  readonly #jobs = new Map<JobNo, Job>();
  #shop: readonly FactRecord[] | null = null;
  #air: readonly AirReading[] | null = null;
  #people: PeopleFacts | null = null;

  forget(job: JobNo | null): void {
    if (job !== null) this.#jobs.delete(job);
    else this.#shop = this.#air = this.#people = null;
  }

  forgetAll(): void {
    this.#jobs.clear();
    this.#shop = this.#air = this.#people = null;
  }

  job(no: JobNo, tx: BookTransaction): Job | null {
    const kept = this.#jobs.get(no);
    if (kept !== undefined) return kept;
    const facts = tx.factsOf(no);
    if (facts.length === 0) return null;
    const job = foldJob(no, facts);
    this.#jobs.set(no, job);
    return job;
  }

  air(tx: BookTransaction): readonly AirReading[] {
    this.#air ??= airReadings(this.shopFacts(tx));
    return this.#air;
  }

  people(tx: BookTransaction): PeopleFacts {
    this.#people ??= peopleFacts(this.shopFacts(tx), tx.adoptions());
    return this.#people;
  }

  /** Air readings, bells, and what people said about themselves, in the order they were entered. */
  shopFacts(tx: BookTransaction): readonly FactRecord[] {
    this.#shop ??= tx.shopFacts(SHOP_FACTS);
    return this.#shop;
  }
}

/** The book as a decision sees it, inside one transaction. */
export function bookIn(tx: BookTransaction, shelf: JobShelf): Book {
  return {
    job: (no) => shelf.job(no, tx),
    openJobs: () => tx.openJobs(),
    get air() {
      return shelf.air(tx);
    },
    get people() {
      return shelf.people(tx);
    },
  };
}
