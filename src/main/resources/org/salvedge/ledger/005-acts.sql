-- Entries of several batches that one act recorded, as a turn with a part out of stock: they are taken back together.
CREATE TABLE act (
  first INTEGER PRIMARY KEY CHECK (first > 0),
  last INTEGER NOT NULL CHECK (last > first),
  crc INTEGER NOT NULL
) STRICT;
CREATE TRIGGER act_no_update BEFORE UPDATE ON act BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END;
CREATE TRIGGER act_no_delete BEFORE DELETE ON act BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END;
