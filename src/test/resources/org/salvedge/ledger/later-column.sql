-- As a script of a later version might.
ALTER TABLE offer ADD COLUMN rank INTEGER NOT NULL DEFAULT 3 CHECK (rank BETWEEN 0 AND 9);
ALTER TABLE offer ADD COLUMN colour INTEGER REFERENCES word;
