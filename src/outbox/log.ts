/** The part of a logger that adapters need; pino fits it. `about` holds the facts, `text` the sentence. */
export interface Log {
  info(about: object, text: string): void;
  warn(about: object, text: string): void;
  error(about: object, text: string): void;
}
