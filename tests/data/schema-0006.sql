CREATE TABLE asked (
  post INTEGER PRIMARY KEY REFERENCES post (seq),
  job TEXT
) STRICT;
CREATE INDEX asked_by_job ON asked (job);
CREATE TABLE asked_reply (
  delivery TEXT PRIMARY KEY,
  job TEXT,
  reader TEXT NOT NULL,
  at REAL NOT NULL,
  answer TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX asked_reply_by_age ON asked_reply (at);
CREATE INDEX asked_reply_by_job ON asked_reply (job, at);
CREATE TABLE fact (
  seq INTEGER PRIMARY KEY,
  entry INTEGER NOT NULL,
  job TEXT,
  happened_at REAL NOT NULL,
  entered_at REAL NOT NULL,
  by_whom TEXT NOT NULL,
  type TEXT NOT NULL,
  undoes INTEGER,
  body TEXT NOT NULL
, link TEXT) STRICT;
CREATE INDEX fact_by_entry ON fact (entry);
CREATE INDEX fact_by_job ON fact (job);
CREATE INDEX fact_by_person ON fact (by_whom, entry) WHERE type NOT IN ('undone', 'reminder-raised', 'bell');
CREATE TRIGGER fact_is_always_linked BEFORE INSERT ON fact WHEN NEW.link IS NULL BEGIN
  SELECT RAISE(ABORT, 'a fact in the book is always linked');
END;
CREATE TRIGGER fact_is_never_changed BEFORE UPDATE ON fact BEGIN
  SELECT RAISE(ABORT, 'a fact in the book is never changed');
END;
CREATE TRIGGER fact_is_never_removed BEFORE DELETE ON fact BEGIN
  SELECT RAISE(ABORT, 'a fact in the book is never removed');
END;
CREATE INDEX fact_undoing ON fact (undoes) WHERE undoes IS NOT NULL;
CREATE TABLE guest (
  person TEXT PRIMARY KEY,
  name TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE home_tab (
  chat_id TEXT PRIMARY KEY,
  at REAL NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE inbox (
  seq INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE,
  at REAL NOT NULL,
  payload TEXT
) STRICT;
CREATE INDEX inbox_handled ON inbox (at) WHERE payload IS NULL;
CREATE INDEX inbox_open ON inbox (seq) WHERE payload IS NOT NULL;
CREATE TABLE meta (
  name TEXT PRIMARY KEY,
  value REAL NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE offer (
  reply TEXT PRIMARY KEY,
  at REAL NOT NULL,
  lines TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX offer_by_age ON offer (at);
CREATE TABLE open_job (
  job TEXT PRIMARY KEY
) STRICT, WITHOUT ROWID;
CREATE TABLE outbox (
  seq INTEGER PRIMARY KEY,
  key TEXT NOT NULL UNIQUE,
  chat TEXT NOT NULL,
  lane TEXT NOT NULL,
  urgent INTEGER NOT NULL CHECK (urgent IN (0, 1)),
  state TEXT NOT NULL DEFAULT 'waiting' CHECK (state IN ('waiting', 'sending', 'sent', 'refused')),
  attempts INTEGER NOT NULL DEFAULT 0,
  not_before REAL NOT NULL,
  target TEXT NOT NULL,
  mention TEXT,
  answer TEXT NOT NULL,
  created_at REAL NOT NULL,
  claimed_at REAL,
  ended_at REAL,
  channel TEXT,
  ts TEXT,
  reason TEXT
) STRICT;
CREATE INDEX outbox_not_before ON outbox (not_before) WHERE state = 'waiting';
CREATE UNIQUE INDEX outbox_one_sending_per_lane ON outbox (lane) WHERE state = 'sending';
CREATE INDEX outbox_waiting ON outbox (lane, urgent DESC, seq) WHERE state = 'waiting';
CREATE TABLE post (
  seq INTEGER PRIMARY KEY,
  key TEXT NOT NULL,
  at REAL NOT NULL,
  due_at REAL NOT NULL,
  to_whom TEXT NOT NULL,
  about TEXT NOT NULL,
  answer TEXT NOT NULL
) STRICT;
CREATE INDEX post_by_key ON post (key);
CREATE TABLE profile (
  chat_id TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  at REAL NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE reminder (
  job TEXT NOT NULL,
  key TEXT NOT NULL,
  joint TEXT NOT NULL,
  card TEXT NOT NULL,
  run INTEGER NOT NULL,
  kind TEXT NOT NULL,
  round INTEGER NOT NULL,
  step INTEGER NOT NULL,
  due_at REAL NOT NULL,
  ring_at REAL NOT NULL,
  route TEXT NOT NULL,
  to_whom TEXT NOT NULL,
  PRIMARY KEY (job, key)
) STRICT, WITHOUT ROWID;
CREATE INDEX reminder_by_ring ON reminder (ring_at, key);
CREATE TABLE seen (
  message TEXT PRIMARY KEY,
  at REAL NOT NULL,
  reply TEXT NOT NULL,
  answer TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX seen_by_age ON seen (at);
CREATE TABLE sheet (
  job TEXT PRIMARY KEY,
  change INTEGER NOT NULL,
  answer TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE TABLE thread (
  job TEXT PRIMARY KEY,
  channel TEXT NOT NULL,
  ts TEXT NOT NULL,
  at REAL NOT NULL,
  UNIQUE (channel, ts)
) STRICT;
