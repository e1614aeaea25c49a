/** One released change of the book's tables. Never edited after a release; a later change is a new number. */
export interface Migration {
  readonly number: number;
  readonly sql: string;
}
