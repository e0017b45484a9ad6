-- Version 4: as many flaws of a roll as it has, each with its place across the roll.
CREATE TABLE flaw (
    key INTEGER NOT NULL PRIMARY KEY CHECK (key > 0),
    stock INTEGER NOT NULL REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    along INTEGER NOT NULL CHECK (along BETWEEN 0 AND 32000000),
    length INTEGER NOT NULL CHECK (length BETWEEN 1 AND 3200000),
    across INTEGER NOT NULL CHECK (across BETWEEN 0 AND 1600000),
    width INTEGER NOT NULL CHECK (width BETWEEN 0 AND 1600000),
    note TEXT NOT NULL CHECK (length(note) <= 500)
) STRICT;
INSERT INTO flaw (key, stock, along, length, across, width, note)
    SELECT (SELECT next_key FROM workshop) + row_number() OVER (ORDER BY key) - 1,
        key, flaw, flaw_length, 0, 0, ''
    FROM stock WHERE flaw_length > 0;
UPDATE workshop SET next_key = next_key + (SELECT count(*) FROM flaw);
-- What was recorded with columns that go now cannot be taken back: the undo of what went before
-- ends here, and the copy that stands beside the file has it.
DELETE FROM history;
ALTER TABLE stock DROP COLUMN flaw;
ALTER TABLE stock DROP COLUMN flaw_length;

PRAGMA user_version = 4;
