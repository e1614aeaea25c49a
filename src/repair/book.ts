import type { AirReading } from '../cure/air.js';
import { curesOf, type Job } from './job.js';
import type { FactRecord } from './facts.js';
import type { JobNo } from './ids.js';
import type { PeopleFacts } from './people-facts.js';
import { isOver, lookAt, type Outlook } from './outlook.js';
import type { Shop } from './shop.js';

/** The book as a decision sees it. */
export interface Book {
  job(no: JobNo): Job | null;
  openJobs(): readonly JobNo[];
  readonly air: readonly AirReading[];
  readonly people: PeopleFacts;
}

/** Shop air readings that still count, oldest first. */
export function airReadings(records: readonly FactRecord[]): AirReading[] {
  const undone = new Set(records.flatMap((record) => (record.fact.type === 'undone' ? [record.fact.entry] : [])));
  return records
    .flatMap((record) => (record.fact.type === 'air' && !undone.has(record.entry) ? [{ at: record.happenedAt, value: record.fact.value, humidity: record.fact.humidity, enteredAt: record.enteredAt }] : []))
    .sort((a, b) => a.at - b.at);
}

/** Outlooks of all cures of a job, in the order they were opened. */
export function outlooksOf(job: Job, shop: Shop, air: readonly AirReading[]): Outlook[] {
  return curesOf(job).map((cure) => lookAt(cure, shop, air));
}

/** Outlooks of the cures that still wait for something. */
export function runningOutlooks(book: Book, shop: Shop, jobs: readonly JobNo[]): Outlook[] {
  return jobs.flatMap((no) => {
    const job = book.job(no);
    return job === null ? [] : outlooksOf(job, shop, book.air).filter((outlook) => !isOver(outlook));
  });
}

/** Every job that is still open, as the book knows it. */
export const openJobsIn = (book: Book): Job[] => book.openJobs().flatMap((no) => book.job(no) ?? []);
