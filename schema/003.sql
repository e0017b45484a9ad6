-- Version 3: what stock is like where that counts, which is one cloth in several widths, how an outside
-- back is fixed, how the widths of a cover are sewn together, and thin cloth sewn on where nobody sees
-- it.
ALTER TABLE stock ADD COLUMN nature TEXT NOT NULL DEFAULT 'plain' CHECK (nature IN (
    'plain', 'vinyl', 'heavy', 'soft', 'elastic', 'card', 'tack_strip', 'thread', 'stitching'));
ALTER TABLE layer ADD COLUMN closing TEXT NOT NULL DEFAULT 'auto' CHECK (closing IN (
    'auto', 'raw', 'row', 'blind'));
ALTER TABLE layer ADD COLUMN seaming TEXT NOT NULL DEFAULT 'near'
    CHECK (seaming IN ('near', 'centre', 'line', 'middle'));
ALTER TABLE layer ADD COLUMN thin INTEGER REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED;
ALTER TABLE layer ADD COLUMN thin_height INTEGER NOT NULL DEFAULT 0
    CHECK (thin_height BETWEEN 0 AND 1920000);
ALTER TABLE stock ADD COLUMN cloth TEXT NOT NULL DEFAULT '' CHECK (length(cloth) <= 60);

PRAGMA user_version = 3;
