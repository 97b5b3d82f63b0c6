-- Whole numbers inside: days are days since 1970-01-01, times of day seconds since then (the shop's own clock), money minor
-- units, minutes, hours and inches millionths. Columns that every count needs stand first: SQLite reads a row from its start.
-- Each row of a fact table is one entry; crc is the CRC-32C of its values, so that audit sees a changed bit.

CREATE TABLE book (
  one INTEGER PRIMARY KEY CHECK (one = 1),
  currency TEXT NOT NULL CHECK (length(currency) = 3)
) STRICT;

-- Dictionaries: texts that come again and again, labels of lots and of sets.
CREATE TABLE word (id INTEGER PRIMARY KEY, text TEXT NOT NULL UNIQUE, crc INTEGER NOT NULL) STRICT;
CREATE TABLE lot_label (id INTEGER PRIMARY KEY, text TEXT NOT NULL UNIQUE, crc INTEGER NOT NULL) STRICT;
CREATE TABLE unit_label (id INTEGER PRIMARY KEY, text TEXT NOT NULL, crc INTEGER NOT NULL) STRICT;

-- Entries recorded in one transaction; recorded_at (milliseconds since 1970, UTC) is NULL for an import.
CREATE TABLE batch (
  first INTEGER PRIMARY KEY CHECK (first > 0),
  last INTEGER NOT NULL CHECK (last >= first),
  recorded_at INTEGER,
  what TEXT NOT NULL CHECK (what IN ('record', 'amend', 'undo', 'import')),
  crc INTEGER NOT NULL
) STRICT;

-- An old entry and the one that replaced it; a new entry that has no row in a fact table undid the old one.
CREATE TABLE supersede (
  old INTEGER PRIMARY KEY,
  new INTEGER NOT NULL UNIQUE CHECK (new > old),
  why TEXT NOT NULL,
  crc INTEGER NOT NULL
) STRICT;

CREATE TABLE lot (
  entry INTEGER PRIMARY KEY,
  lot INTEGER NOT NULL REFERENCES lot_label,
  supplier INTEGER NOT NULL REFERENCES word,
  bought_on INTEGER NOT NULL CHECK (bought_on BETWEEN 0 AND 65535),
  received_on INTEGER CHECK (received_on BETWEEN bought_on AND 65535),
  currency TEXT NOT NULL CHECK (length(currency) = 3),
  rate TEXT,
  price INTEGER NOT NULL CHECK (price BETWEEN 0 AND 999999999999),
  premium INTEGER CHECK (premium BETWEEN 0 AND 999999999999),
  freight INTEGER CHECK (freight BETWEEN 0 AND 999999999999),
  other_cost INTEGER CHECK (other_cost BETWEEN 0 AND 999999999999),
  minutes INTEGER CHECK (minutes BETWEEN 0 AND 999999999999),
  basis INTEGER CHECK (basis BETWEEN 0 AND 3),
  note TEXT,
  crc INTEGER NOT NULL
) STRICT;

CREATE TABLE unit (
  entry INTEGER PRIMARY KEY,
  unit INTEGER NOT NULL REFERENCES unit_label,
  lot INTEGER NOT NULL REFERENCES lot_label,
  family INTEGER NOT NULL REFERENCES word,
  maker INTEGER NOT NULL REFERENCES word,
  model INTEGER NOT NULL REFERENCES word,
  claimed INTEGER NOT NULL REFERENCES word,
  inches INTEGER CHECK (inches BETWEEN 1 AND 150000000),
  arrived INTEGER NOT NULL CHECK (arrived IN (0, 1)),
  incomplete INTEGER CHECK (incomplete IN (0, 1)),
  line INTEGER CHECK (line BETWEEN 1 AND 2147483647),
  landed_cost INTEGER CHECK (landed_cost BETWEEN 0 AND 999999999999),
  asking INTEGER CHECK (asking BETWEEN 0 AND 999999999999),
  listed_maker INTEGER REFERENCES word,
  listed_model INTEGER REFERENCES word,
  listed_inches INTEGER CHECK (listed_inches BETWEEN 1 AND 150000000),
  rows INTEGER CHECK (rows BETWEEN 1 AND 2147483647),
  panel INTEGER REFERENCES word,
  sheet INTEGER REFERENCES word,
  place INTEGER REFERENCES word,
  waiting_for INTEGER REFERENCES word,
  expected_on INTEGER CHECK (expected_on BETWEEN 0 AND 65535),
  serial TEXT,
  claimed_text TEXT,
  crc INTEGER NOT NULL
) STRICT;

CREATE TABLE attempt (
  entry INTEGER PRIMARY KEY,
  unit INTEGER NOT NULL REFERENCES unit_label,
  started_at INTEGER NOT NULL CHECK (started_at BETWEEN 0 AND 5662310399),
  attempt INTEGER NOT NULL CHECK (attempt BETWEEN 1 AND 2147483647),
  fault INTEGER NOT NULL REFERENCES word,
  fix INTEGER NOT NULL REFERENCES word,
  passed INTEGER CHECK (passed IN (0, 1)),
  diagnosis_minutes INTEGER CHECK (diagnosis_minutes BETWEEN 0 AND 999999999999),
  fix_minutes INTEGER CHECK (fix_minutes BETWEEN 0 AND 999999999999),
  parts_cost INTEGER CHECK (parts_cost BETWEEN 0 AND 999999999999),
  grade INTEGER CHECK (grade BETWEEN 0 AND 2),
  technician INTEGER REFERENCES word,
  soak_hours INTEGER CHECK (soak_hours BETWEEN 0 AND 999999999999),
  residual_close INTEGER CHECK (residual_close BETWEEN 0 AND 2),
  residual_viewing INTEGER CHECK (residual_viewing BETWEEN 0 AND 2),
  safety_tested INTEGER CHECK (safety_tested IN (0, 1)),
  owner_data_reset INTEGER CHECK (owner_data_reset IN (0, 1)),
  note TEXT,
  crc INTEGER NOT NULL
) STRICT;

CREATE TABLE exit (
  entry INTEGER PRIMARY KEY,
  unit INTEGER NOT NULL REFERENCES unit_label,
  "on" INTEGER NOT NULL CHECK ("on" BETWEEN 0 AND 65535),
  seq INTEGER NOT NULL CHECK (seq BETWEEN 1 AND 2147483647),
  exit INTEGER NOT NULL CHECK (exit BETWEEN 0 AND 4),
  gone INTEGER CHECK (gone IN (0, 1)),
  gross INTEGER NOT NULL CHECK (gross BETWEEN 0 AND 999999999999),
  fees INTEGER CHECK (fees BETWEEN 0 AND 999999999999),
  shipping INTEGER CHECK (shipping BETWEEN 0 AND 999999999999),
  tax INTEGER CHECK (tax BETWEEN 0 AND 999999999999),
  minutes INTEGER CHECK (minutes BETWEEN 0 AND 999999999999),
  grade INTEGER CHECK (grade BETWEEN 0 AND 2),
  channel INTEGER REFERENCES word,
  disclosed INTEGER CHECK (disclosed IN (0, 1)),
  unmet_reason TEXT,
  crc INTEGER NOT NULL
) STRICT;

CREATE TABLE comeback (
  entry INTEGER PRIMARY KEY,
  unit INTEGER NOT NULL REFERENCES unit_label,
  "on" INTEGER NOT NULL CHECK ("on" BETWEEN 0 AND 65535),
  restocked INTEGER NOT NULL CHECK (restocked IN (0, 1)),
  refund INTEGER CHECK (refund BETWEEN 0 AND 999999999999),
  cost INTEGER CHECK (cost BETWEEN 0 AND 999999999999),
  fault INTEGER REFERENCES word,
  crc INTEGER NOT NULL
) STRICT;

CREATE TABLE part (
  entry INTEGER PRIMARY KEY,
  part TEXT NOT NULL,
  from_unit INTEGER REFERENCES unit_label,
  kind INTEGER NOT NULL CHECK (kind BETWEEN 0 AND 10),
  number TEXT,
  "on" INTEGER NOT NULL CHECK ("on" BETWEEN 0 AND 65535),
  value INTEGER NOT NULL CHECK (value BETWEEN 0 AND 999999999999),
  tested INTEGER CHECK (tested BETWEEN 0 AND 2),
  attempt INTEGER CHECK (attempt BETWEEN 1 AND 2147483647),
  gone_on INTEGER CHECK (gone_on BETWEEN "on" AND 65535),
  crc INTEGER NOT NULL
) STRICT;

CREATE TABLE recipe (
  entry INTEGER PRIMARY KEY,
  panel INTEGER NOT NULL REFERENCES word,
  side INTEGER NOT NULL CHECK (side IN (0, 1)),
  contacts TEXT NOT NULL,
  signals TEXT,
  residual_close INTEGER CHECK (residual_close BETWEEN 0 AND 2),
  residual_viewing INTEGER CHECK (residual_viewing BETWEEN 0 AND 2),
  used INTEGER CHECK (used BETWEEN 0 AND 2147483647),
  good INTEGER CHECK (good BETWEEN 0 AND 2147483647),
  note TEXT,
  crc INTEGER NOT NULL
) STRICT;

CREATE TABLE bid (
  entry INTEGER PRIMARY KEY,
  bid INTEGER NOT NULL CHECK (bid BETWEEN 1 AND 2147483647),
  "on" INTEGER NOT NULL CHECK ("on" BETWEEN 0 AND 65535),
  supplier INTEGER REFERENCES word,
  manifest TEXT,
  sets INTEGER CHECK (sets BETWEEN 0 AND 2147483647),
  "limit" INTEGER CHECK ("limit" BETWEEN 0 AND 999999999999),
  mean INTEGER CHECK (mean BETWEEN -999999999999 AND 999999999999),
  p10 INTEGER CHECK (p10 BETWEEN -999999999999 AND 999999999999),
  p50 INTEGER CHECK (p50 BETWEEN -999999999999 AND 999999999999),
  p90 INTEGER CHECK (p90 BETWEEN -999999999999 AND 999999999999),
  won INTEGER CHECK (won IN (0, 1)),
  hammer INTEGER CHECK (hammer BETWEEN 0 AND 999999999999),
  lot INTEGER REFERENCES lot_label,
  crc INTEGER NOT NULL
) STRICT;

CREATE TABLE offer (
  entry INTEGER PRIMARY KEY,
  unit INTEGER NOT NULL REFERENCES unit_label,
  "on" INTEGER NOT NULL CHECK ("on" BETWEEN 0 AND 65535),
  price INTEGER NOT NULL CHECK (price BETWEEN 0 AND 999999999999),
  channel INTEGER REFERENCES word,
  crc INTEGER NOT NULL
) STRICT;
