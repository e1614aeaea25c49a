import type { BookStore, OutboxStore } from '../clerk/ports.js';

/** One file holds both, so that a fact and what must be said about it are stored together. */
export type Book = BookStore & OutboxStore;
