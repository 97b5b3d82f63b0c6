-- When a month's review was printed (milliseconds since 1970, UTC), the last entry on record then, and the figures of its front
-- page, one to a line as name=value.
CREATE TABLE printing (
  number INTEGER PRIMARY KEY,
  month TEXT NOT NULL CHECK (length(month) = 7),
  printed_at INTEGER NOT NULL,
  last INTEGER NOT NULL CHECK (last >= 0),
  figures TEXT NOT NULL,
  crc INTEGER NOT NULL
) STRICT;
CREATE INDEX printing_by_month ON printing (month);
CREATE TRIGGER printing_no_update BEFORE UPDATE ON printing BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END;
CREATE TRIGGER printing_no_delete BEFORE DELETE ON printing BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END;
