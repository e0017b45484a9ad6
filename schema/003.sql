-- Version 3: what stock is like where that counts, which is one cloth in several widths, how an outside
-- back is fixed, how the widths of a cover are sewn together, and thin cloth sewn on where nobody sees
-- it; how a cover keeps to the pattern of its cloth, and a flaw of a roll to be cut round; covers that
-- slip on and off, welts of two cords; tufting in channels, and how much cloth it takes.
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
ALTER TABLE layer ADD COLUMN unmatched INTEGER NOT NULL DEFAULT 0 CHECK (unmatched IN (0, 1));
ALTER TABLE layer ADD COLUMN motif INTEGER NOT NULL DEFAULT 0
    CHECK (motif BETWEEN -960000 AND 960000);
ALTER TABLE stock ADD COLUMN flaw INTEGER NOT NULL DEFAULT 0 CHECK (flaw BETWEEN 0 AND 32000000);
ALTER TABLE stock ADD COLUMN flaw_length INTEGER NOT NULL DEFAULT 0
    CHECK (flaw_length BETWEEN 0 AND 3200000);
ALTER TABLE layer ADD COLUMN slip INTEGER NOT NULL DEFAULT 0 CHECK (slip IN (0, 1));
ALTER TABLE layer ADD COLUMN doubled INTEGER NOT NULL DEFAULT 0 CHECK (doubled IN (0, 1));
ALTER TABLE tufting ADD COLUMN made TEXT NOT NULL DEFAULT 'buttons' CHECK (made IN (
    'buttons', 'channels'));
ALTER TABLE tufting ADD COLUMN allowance TEXT NOT NULL DEFAULT 'auto' CHECK (allowance IN (
    'auto', 'least', 'shallow', 'pull', 'generous'));
ALTER TABLE tufting ADD COLUMN trial_across INTEGER NOT NULL DEFAULT 0
    CHECK (trial_across BETWEEN 0 AND 480000);
ALTER TABLE tufting ADD COLUMN trial_up INTEGER NOT NULL DEFAULT 0
    CHECK (trial_up BETWEEN 0 AND 480000);
-- Trade values that changed nothing are gone, and what was set for them with them.
DELETE FROM shop_value WHERE name IN (
    'sheet.edge_trim.critical', 'store_cut.tolerance', 'screw.bite.side.good',
    'screw.bite.end.strength', 'screw.receive.share', 'joint.screws.seat',
    'corner_block.screws', 'corner_block.keep', 'hinge.board.min', 'panel.edge.good',
    'span.seat.most.1_2', 'span.seat.most.5_8', 'span.seat.most.3_4', 'strength.deflection',
    'strength.load', 'bed.beam.width', 'bed.leg.pitch', 'slat.width.min', 'slat.thickness.min',
    'slat.gap.most', 'end.min.unpiloted', 'along.min.diameters', 'across.min.diameters',
    'join.pitch.seat', 'patch.margin', 'patch.finger', 'open.margin', 'open.margin.stiff',
    'open.longest', 'open.notch', 'driver.body.compact', 'driver.bit.longest', 'access.hole',
    'access.hole.clear', 'staple.row', 'mattress.clear', 'door.stop', 'door.margin.good',
    'stairs.factor', 'minutes.store_cut');
DELETE FROM build_value WHERE name IN (
    'sheet.edge_trim.critical', 'store_cut.tolerance', 'screw.bite.side.good',
    'screw.bite.end.strength', 'screw.receive.share', 'joint.screws.seat',
    'corner_block.screws', 'corner_block.keep', 'hinge.board.min', 'panel.edge.good',
    'span.seat.most.1_2', 'span.seat.most.5_8', 'span.seat.most.3_4', 'strength.deflection',
    'strength.load', 'bed.beam.width', 'bed.leg.pitch', 'slat.width.min', 'slat.thickness.min',
    'slat.gap.most', 'end.min.unpiloted', 'along.min.diameters', 'across.min.diameters',
    'join.pitch.seat', 'patch.margin', 'patch.finger', 'open.margin', 'open.margin.stiff',
    'open.longest', 'open.notch', 'driver.body.compact', 'driver.bit.longest', 'access.hole',
    'access.hole.clear', 'staple.row', 'mattress.clear', 'door.stop', 'door.margin.good',
    'stairs.factor', 'minutes.store_cut');

-- The clock at the bench: what a step takes a maker with no pace of his own, and the pace
-- that his own times show.
ALTER TABLE tick ADD COLUMN usual INTEGER NOT NULL DEFAULT 0 CHECK (usual BETWEEN 0 AND 100000000);

-- Steps that the clock was started for and that are not ticked yet.
CREATE TABLE timing (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    step TEXT NOT NULL CHECK (length(step) BETWEEN 1 AND 80),
    began TEXT NOT NULL CHECK (length(began) <= 20),
    minutes INTEGER NOT NULL CHECK (minutes BETWEEN 0 AND 100000000),
    PRIMARY KEY (build, key)
) STRICT, WITHOUT ROWID;

-- What steps of a kind took in all builds, beside what they usually take.
CREATE TABLE pace (
    key INTEGER NOT NULL PRIMARY KEY CHECK (key > 0),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 20),
    usual INTEGER NOT NULL CHECK (usual BETWEEN 0 AND 1000000000),
    took INTEGER NOT NULL CHECK (took BETWEEN 0 AND 1000000000),
    count INTEGER NOT NULL CHECK (count BETWEEN 0 AND 1000000)
) STRICT;

PRAGMA user_version = 3;
