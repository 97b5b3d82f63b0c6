-- As a script of a later version might.
ALTER TABLE offer ADD COLUMN colour INTEGER REFERENCES word;
