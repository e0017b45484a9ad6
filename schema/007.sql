-- Version 7: what parts were cut from, where they lay on it and what is left of it, so that what is cut
-- later is cut from that. And the step of buying that a layout goes with: when it is taken back, so is
-- the layout. Until now only that of the first list was kept so.
CREATE TABLE cut_stock (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    tick INTEGER NOT NULL,
    origin TEXT NOT NULL CHECK (origin IN ('bought', 'shelf', 'rest', 'part')),
    part TEXT NOT NULL CHECK (length(part) <= 40),
    length INTEGER NOT NULL CHECK (length BETWEEN 0 AND 32000000),
    width INTEGER NOT NULL CHECK (width BETWEEN 0 AND 3200000),
    pack INTEGER NOT NULL CHECK (pack BETWEEN 0 AND 1000000),
    rest INTEGER NOT NULL CHECK (rest BETWEEN 0 AND 32000000),
    rest_across INTEGER NOT NULL CHECK (rest_across BETWEEN 0 AND 3200000),
    kept INTEGER NOT NULL CHECK (kept IN (0, 1)),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, tick) REFERENCES tick (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Columns that refer within the build need their tables made anew. Columns come last, so that undo of
-- what was recorded before still fits.
CREATE TABLE new_cut_part (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    tick INTEGER NOT NULL,
    part TEXT NOT NULL CHECK (length(part) BETWEEN 1 AND 40),
    length INTEGER NOT NULL CHECK (length BETWEEN 0 AND 6400000),
    width INTEGER NOT NULL CHECK (width BETWEEN 0 AND 6400000),
    spoiled INTEGER NOT NULL CHECK (spoiled IN (0, 1)),
    box INTEGER,
    cut_stock INTEGER,
    along INTEGER NOT NULL DEFAULT 0 CHECK (along BETWEEN 0 AND 32000000),
    across INTEGER NOT NULL DEFAULT 0 CHECK (across BETWEEN 0 AND 3200000),
    turned INTEGER NOT NULL DEFAULT 0 CHECK (turned IN (0, 1)),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, tick) REFERENCES tick (build, key)
        DEFERRABLE INITIALLY DEFERRED,
    FOREIGN KEY (build, box) REFERENCES box (build, key)
        DEFERRABLE INITIALLY DEFERRED,
    FOREIGN KEY (build, cut_stock) REFERENCES cut_stock (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;
INSERT INTO new_cut_part (build, key, tick, part, length, width, spoiled)
    SELECT build, key, tick, part, length, width, spoiled FROM cut_part;
DROP TABLE cut_part;
ALTER TABLE new_cut_part RENAME TO cut_part;

-- Beside those of a trip, which begin with p, all layouts of a build that has bought what is on its
-- list were kept by that step.
CREATE TABLE new_layout (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    job TEXT NOT NULL CHECK (length(job) BETWEEN 1 AND 16),
    content TEXT NOT NULL CHECK (length(content) BETWEEN 1 AND 100000),
    tick INTEGER,
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, tick) REFERENCES tick (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;
INSERT INTO new_layout (build, key, job, content, tick)
    SELECT build, key, job, content,
        (SELECT min(key) FROM tick
            WHERE tick.build = layout.build AND step = 'buy' AND layout.job NOT LIKE 'p%')
    FROM layout;
DROP TABLE layout;
ALTER TABLE new_layout RENAME TO layout;

PRAGMA user_version = 7;
