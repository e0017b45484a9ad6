-- Version 6: whether a spend pays for all of its line, whatever it came to. Until now each did; where it
-- was written down how many it paid for, that tells.
ALTER TABLE spend ADD COLUMN settles INTEGER NOT NULL DEFAULT 1 CHECK (settles IN (0, 1));
ALTER TABLE shop_spend ADD COLUMN settles INTEGER NOT NULL DEFAULT 1 CHECK (settles IN (0, 1));
UPDATE spend SET settles = 0 WHERE count > 0;
UPDATE shop_spend SET settles = 0 WHERE count > 0;

PRAGMA user_version = 6;
