-- Version 6: how many pieces were in a pack that was bought (0: what offers of that size say), since a
-- price may be entered later, and by another pack. And whether a spend pays for all of its line, whatever it came to. Until now each did; where it
-- was written down how many it paid for, that tells.
ALTER TABLE spend ADD COLUMN settles INTEGER NOT NULL DEFAULT 1 CHECK (settles IN (0, 1));
ALTER TABLE shop_spend ADD COLUMN settles INTEGER NOT NULL DEFAULT 1 CHECK (settles IN (0, 1));
UPDATE spend SET settles = 0 WHERE count > 0;
UPDATE shop_spend SET settles = 0 WHERE count > 0;
ALTER TABLE bought ADD COLUMN pack INTEGER NOT NULL DEFAULT 0 CHECK (pack BETWEEN 0 AND 1000000);

PRAGMA user_version = 6;
