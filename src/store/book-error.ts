export type BookErrorCode = 'folder-not-made' | 'not-opened' | 'not-a-book' | 'newer-book';

/** The book's file cannot be used. The message names the file, what is wrong and what to do. */
export class BookError extends Error {
  override readonly name = 'BookError';
  readonly code: BookErrorCode;
  readonly file: string;

  constructor(code: BookErrorCode, file: string, message: string, cause?: unknown) {
    super(message, cause === undefined ? undefined : { cause });
    this.code = code;
    this.file = file;
  }
}
