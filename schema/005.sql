-- Version 5: what an offer cost before; whether tax is in a price, and how much; suppliers who bring
-- an order and what they ask for it; which size or pack a spend was for.
CREATE TABLE past_price (
    key INTEGER NOT NULL PRIMARY KEY CHECK (key > 0),
    stock INTEGER NOT NULL REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    length INTEGER NOT NULL CHECK (length BETWEEN 0 AND 32000000),
    width INTEGER NOT NULL CHECK (width BETWEEN 0 AND 3200000),
    pack INTEGER NOT NULL CHECK (pack BETWEEN 1 AND 1000000),
    volume INTEGER NOT NULL CHECK (volume BETWEEN 0 AND 100000000),
    price INTEGER NOT NULL CHECK (price BETWEEN 0 AND 1000000000000),
    supplier TEXT NOT NULL CHECK (length(supplier) <= 60),
    dated TEXT NOT NULL CHECK (length(dated) IN (0, 10))
) STRICT;
CREATE TABLE supplier (
    key INTEGER NOT NULL PRIMARY KEY CHECK (key > 0),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
    delivery INTEGER NOT NULL CHECK (delivery BETWEEN 0 AND 1000000000000),
    free_from INTEGER NOT NULL CHECK (free_from BETWEEN 0 AND 1000000000000),
    note TEXT NOT NULL CHECK (length(note) <= 500)
) STRICT;
ALTER TABLE offer ADD COLUMN taxed TEXT NOT NULL DEFAULT 'added' CHECK (taxed IN (
    'added', 'included', 'free'));
ALTER TABLE offer ADD COLUMN tax INTEGER NOT NULL DEFAULT 0 CHECK (tax BETWEEN 0 AND 1000000);
ALTER TABLE spend ADD COLUMN length INTEGER NOT NULL DEFAULT 0
    CHECK (length BETWEEN 0 AND 32000000);
ALTER TABLE spend ADD COLUMN width INTEGER NOT NULL DEFAULT 0 CHECK (width BETWEEN 0 AND 3200000);
ALTER TABLE spend ADD COLUMN pack INTEGER NOT NULL DEFAULT 0 CHECK (pack BETWEEN 0 AND 1000000);
ALTER TABLE shop_spend ADD COLUMN length INTEGER NOT NULL DEFAULT 0
    CHECK (length BETWEEN 0 AND 32000000);
ALTER TABLE shop_spend ADD COLUMN width INTEGER NOT NULL DEFAULT 0
    CHECK (width BETWEEN 0 AND 3200000);
ALTER TABLE shop_spend ADD COLUMN pack INTEGER NOT NULL DEFAULT 0
    CHECK (pack BETWEEN 0 AND 1000000);
-- What is missing before a build can go on, for the list of builds: a cache like the rest of its table,
-- empty until the build is planned again.
ALTER TABLE summary ADD COLUMN missing TEXT NOT NULL DEFAULT '';

PRAGMA user_version = 5;
