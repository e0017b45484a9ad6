-- Version 3: what stock is like where that counts, and how an outside back is fixed.
ALTER TABLE stock ADD COLUMN nature TEXT NOT NULL DEFAULT 'plain' CHECK (nature IN (
    'plain', 'vinyl', 'heavy', 'soft', 'elastic', 'card', 'tack_strip', 'thread', 'stitching'));
ALTER TABLE layer ADD COLUMN closing TEXT NOT NULL DEFAULT 'auto' CHECK (closing IN (
    'auto', 'raw', 'row', 'blind'));

PRAGMA user_version = 3;
