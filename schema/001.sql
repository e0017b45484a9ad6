-- The store, version 1: one workshop and all its builds in one SQLite file.
--
-- One table an entity, one column a field, named and ordered as in src/model/fields.h; a test
-- compares the two, ranges and words included. Values are whole numbers of small units:
--
--   lengths    1/320 mm           ratios   1/1000000        areas         mm2
--   angles     1/1000 degree      minutes  1/1000 min       volumes       mm3
--   densities  g/m3               weights by area mg/m2     money         minor units
--   flags      0 or 1             choices  their word       days          "2026-11-25" or empty
--
-- An item of the workshop is known by its key, an item of a build by the build's key and its own.
-- Keys order everything and are never given out again. A reference to nothing is NULL. All foreign
-- keys are looked at when a transaction ends, so that rows can be written in any order; only the
-- reference to the build cascades, and nothing is ever set to NULL behind the program's back,
-- because a recorded change has to name every row that it touched.
--
-- A plan is never stored: it is worked out from these facts.
--
-- Every statement that makes something begins a line with CREATE and ends one with a semicolon.

PRAGMA application_id = 1937012070; -- "stuf"
PRAGMA user_version = 1;

-- ---- the workshop ----

-- A single row. next_key gives keys to the items of the workshop and to the builds.
CREATE TABLE workshop (
    key INTEGER NOT NULL PRIMARY KEY CHECK (key = 1),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
    currency TEXT NOT NULL CHECK (length(currency) = 3),
    digits INTEGER NOT NULL CHECK (digits BETWEEN 0 AND 3),
    units TEXT NOT NULL CHECK (units IN ('inch', 'mm')),
    skill INTEGER NOT NULL CHECK (skill BETWEEN 100000 AND 10000000),
    helper INTEGER NOT NULL CHECK (helper IN (0, 1)),
    tax INTEGER NOT NULL CHECK (tax BETWEEN 0 AND 1000000),
    session INTEGER NOT NULL CHECK (session BETWEEN 10000 AND 960000),
    next_key INTEGER NOT NULL CHECK (next_key BETWEEN 1 AND 1000000000000000)
) STRICT;

-- Tools at hand.
CREATE TABLE tool (
    key INTEGER NOT NULL PRIMARY KEY CHECK (key > 0),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
    kind TEXT NOT NULL CHECK (kind IN (
        'driver', 'long_bit', 'right_angle', 'stubby', 'air_gun', 'hand_gun', 'saw',
        'sewing_machine')),
    length INTEGER NOT NULL CHECK (length BETWEEN 0 AND 320000),
    radius INTEGER NOT NULL CHECK (radius BETWEEN 0 AND 96000),
    note TEXT NOT NULL CHECK (length(note) <= 500)
) STRICT;

-- Sets of builds.
CREATE TABLE "set" (
    key INTEGER NOT NULL PRIMARY KEY CHECK (key > 0),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
    budget INTEGER NOT NULL CHECK (budget BETWEEN 0 AND 1000000000000),
    note TEXT NOT NULL CHECK (length(note) <= 500)
) STRICT;

-- What can be bought.
CREATE TABLE stock (
    key INTEGER NOT NULL PRIMARY KEY CHECK (key > 0),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
    kind TEXT NOT NULL CHECK (kind IN (
        'stick', 'sheet', 'cloth', 'foam', 'batting', 'screw', 'bolt', 'staple', 'nail', 'strip',
        'button', 'cord', 'glue', 'spray', 'hardware', 'other')),
    wood TEXT NOT NULL CHECK (wood IN ('soft', 'hard')),
    thickness INTEGER NOT NULL CHECK (thickness BETWEEN 0 AND 160000),
    thickness_sold INTEGER NOT NULL CHECK (thickness_sold BETWEEN 0 AND 160000),
    width INTEGER NOT NULL CHECK (width BETWEEN 0 AND 1600000),
    length INTEGER NOT NULL CHECK (length BETWEEN 0 AND 320000),
    gauge INTEGER NOT NULL CHECK (gauge BETWEEN 0 AND 30),
    diameter INTEGER NOT NULL CHECK (diameter BETWEEN 0 AND 32000),
    repeat_along INTEGER NOT NULL CHECK (repeat_along BETWEEN 0 AND 960000),
    repeat_across INTEGER NOT NULL CHECK (repeat_across BETWEEN 0 AND 960000),
    half_drop INTEGER NOT NULL CHECK (half_drop IN (0, 1)),
    pile INTEGER NOT NULL CHECK (pile IN (0, 1)),
    railroad INTEGER NOT NULL CHECK (railroad IN (0, 1)),
    grain INTEGER NOT NULL CHECK (grain IN (0, 1)),
    least_cut INTEGER NOT NULL CHECK (least_cut BETWEEN 0 AND 3200000),
    step_cut INTEGER NOT NULL CHECK (step_cut BETWEEN 0 AND 3200000),
    density INTEGER NOT NULL CHECK (density BETWEEN 0 AND 5000000),
    area_mass INTEGER NOT NULL CHECK (area_mass BETWEEN 0 AND 100000000),
    coverage INTEGER NOT NULL CHECK (coverage BETWEEN 0 AND 1000000000),
    lot TEXT NOT NULL CHECK (length(lot) <= 60),
    supplier TEXT NOT NULL CHECK (length(supplier) <= 60),
    note TEXT NOT NULL CHECK (length(note) <= 500)
) STRICT;

-- Sizes and packs with their prices.
CREATE TABLE offer (
    key INTEGER NOT NULL PRIMARY KEY CHECK (key > 0),
    stock INTEGER NOT NULL REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    length INTEGER NOT NULL CHECK (length BETWEEN 0 AND 32000000),
    width INTEGER NOT NULL CHECK (width BETWEEN 0 AND 3200000),
    pack INTEGER NOT NULL CHECK (pack BETWEEN 1 AND 1000000),
    volume INTEGER NOT NULL CHECK (volume BETWEEN 0 AND 100000000),
    price INTEGER NOT NULL CHECK (price BETWEEN 0 AND 1000000000000),
    supplier TEXT NOT NULL CHECK (length(supplier) <= 60),
    dated TEXT NOT NULL CHECK (length(dated) IN (0, 10)),
    note TEXT NOT NULL CHECK (length(note) <= 500)
) STRICT;

-- The shelf. Builds are named, not referred to: a leftover outlives the build it was left from.
CREATE TABLE leftover (
    key INTEGER NOT NULL PRIMARY KEY CHECK (key > 0),
    stock INTEGER NOT NULL REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    length INTEGER NOT NULL CHECK (length BETWEEN 0 AND 32000000),
    width INTEGER NOT NULL CHECK (width BETWEEN 0 AND 3200000),
    count INTEGER NOT NULL CHECK (count BETWEEN 0 AND 1000000),
    place TEXT NOT NULL CHECK (length(place) <= 60),
    from_build TEXT NOT NULL CHECK (length(from_build) <= 60),
    kept_for TEXT NOT NULL CHECK (length(kept_for) <= 60),
    note TEXT NOT NULL CHECK (length(note) <= 500)
) STRICT;

-- Trade values of the workshop.
CREATE TABLE shop_value (
    key INTEGER NOT NULL PRIMARY KEY CHECK (key > 0),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
    value TEXT NOT NULL CHECK (length(value) BETWEEN 1 AND 40)
) STRICT;

-- Spend for the shelf.
CREATE TABLE shop_spend (
    key INTEGER NOT NULL PRIMARY KEY CHECK (key > 0),
    dated TEXT NOT NULL CHECK (length(dated) = 10),
    amount INTEGER NOT NULL CHECK (amount BETWEEN -1000000000000 AND 1000000000000),
    tax INTEGER NOT NULL CHECK (tax BETWEEN -1000000000000 AND 1000000000000),
    what TEXT NOT NULL CHECK (length(what) BETWEEN 1 AND 120),
    count INTEGER NOT NULL CHECK (count BETWEEN 0 AND 1000000),
    stock INTEGER REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    aisle TEXT NOT NULL CHECK (aisle IN (
        'lumber', 'sheets', 'fasteners', 'soft_goods', 'cloth', 'trim', 'adhesives', 'hardware')),
    supplier TEXT NOT NULL CHECK (length(supplier) <= 60),
    note TEXT NOT NULL CHECK (length(note) <= 500)
) STRICT;

-- ---- builds ----

-- next_key gives keys to the items of the build.
CREATE TABLE build (
    key INTEGER NOT NULL PRIMARY KEY CHECK (key > 0),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
    state TEXT NOT NULL CHECK (state IN ('idea', 'ready', 'making', 'resting', 'finished')),
    units TEXT NOT NULL CHECK (units IN ('inch', 'mm')),
    note TEXT NOT NULL CHECK (length(note) <= 2000),
    budget INTEGER NOT NULL CHECK (budget BETWEEN 0 AND 1000000000000),
    ready_made INTEGER NOT NULL CHECK (ready_made BETWEEN 0 AND 1000000000000),
    due TEXT NOT NULL CHECK (length(due) IN (0, 10)),
    week INTEGER NOT NULL CHECK (week BETWEEN 0 AND 10080000),
    "set" INTEGER REFERENCES "set" (key) DEFERRABLE INITIALLY DEFERRED,
    next_key INTEGER NOT NULL CHECK (next_key BETWEEN 1 AND 1000000000000000)
) STRICT;

-- Trade values of the build.
CREATE TABLE build_value (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 60),
    value TEXT NOT NULL CHECK (length(value) BETWEEN 1 AND 40),
    PRIMARY KEY (build, key)
) STRICT, WITHOUT ROWID;

-- The way into the room.
CREATE TABLE passage (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    kind TEXT NOT NULL CHECK (kind IN ('door', 'hall', 'stair', 'lift', 'vehicle')),
    name TEXT NOT NULL CHECK (length(name) <= 60),
    width INTEGER NOT NULL CHECK (width BETWEEN 0 AND 6400000),
    height INTEGER NOT NULL CHECK (height BETWEEN 0 AND 6400000),
    length INTEGER NOT NULL CHECK (length BETWEEN 0 AND 6400000),
    PRIMARY KEY (build, key)
) STRICT, WITHOUT ROWID;

-- Walls of the room.
CREATE TABLE wall (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    side TEXT NOT NULL CHECK (side IN ('front', 'back', 'left', 'right', 'top', 'bottom')),
    gap INTEGER NOT NULL CHECK (gap BETWEEN 0 AND 6400000),
    skirting_height INTEGER NOT NULL CHECK (skirting_height BETWEEN 0 AND 320000),
    skirting_depth INTEGER NOT NULL CHECK (skirting_depth BETWEEN 0 AND 96000),
    first_stud INTEGER NOT NULL CHECK (first_stud BETWEEN 0 AND 6400000),
    stud_pitch INTEGER NOT NULL CHECK (stud_pitch BETWEEN 0 AND 640000),
    PRIMARY KEY (build, key)
) STRICT, WITHOUT ROWID;

-- Given objects.
CREATE TABLE object (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    kind TEXT NOT NULL CHECK (kind IN ('mattress', 'bed_frame', 'table', 'socket', 'other')),
    name TEXT NOT NULL CHECK (length(name) <= 60),
    x INTEGER NOT NULL CHECK (x BETWEEN -6400000 AND 6400000),
    y INTEGER NOT NULL CHECK (y BETWEEN -6400000 AND 6400000),
    z INTEGER NOT NULL CHECK (z BETWEEN -6400000 AND 6400000),
    width INTEGER NOT NULL CHECK (width BETWEEN 0 AND 6400000),
    depth INTEGER NOT NULL CHECK (depth BETWEEN 0 AND 6400000),
    height INTEGER NOT NULL CHECK (height BETWEEN 0 AND 6400000),
    PRIMARY KEY (build, key)
) STRICT, WITHOUT ROWID;

-- Frame boxes.
CREATE TABLE box (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 20),
    frame TEXT NOT NULL CHECK (frame IN ('ladder', 'crate', 'board', 'cushion')),
    width INTEGER NOT NULL CHECK (width BETWEEN 3200 AND 1920000),
    depth INTEGER NOT NULL CHECK (depth BETWEEN 960 AND 1920000),
    height INTEGER NOT NULL CHECK (height BETWEEN 960 AND 1920000),
    stick INTEGER REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    stick_set TEXT NOT NULL CHECK (stick_set IN ('on_edge', 'flat')),
    through TEXT NOT NULL CHECK (through IN ('uprights', 'rails')),
    supports TEXT NOT NULL CHECK (supports IN ('auto', 'hand')),
    crosses TEXT NOT NULL CHECK (crosses IN ('auto', 'hand')),
    main_side TEXT NOT NULL CHECK (main_side IN (
        'front', 'back', 'left', 'right', 'top', 'bottom')),
    outline TEXT NOT NULL CHECK (outline IN (
        'rectangle', 'arch', 'shoulder', 'slope', 'points')),
    rise INTEGER NOT NULL CHECK (rise BETWEEN 0 AND 960000),
    lean_axis TEXT NOT NULL CHECK (lean_axis IN ('x', 'y', 'z')),
    lean INTEGER NOT NULL CHECK (lean BETWEEN -45000 AND 45000),
    mirror_of INTEGER,
    note TEXT NOT NULL CHECK (length(note) <= 500),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, mirror_of) REFERENCES box (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- How faces are seen.
CREATE TABLE face (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    box INTEGER NOT NULL,
    side TEXT NOT NULL CHECK (side IN ('front', 'back', 'left', 'right', 'top', 'bottom')),
    seen TEXT NOT NULL CHECK (seen IN ('seen', 'wall', 'never')),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, box) REFERENCES box (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Panels and webbing.
CREATE TABLE facing (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    box INTEGER NOT NULL,
    side TEXT NOT NULL CHECK (side IN ('front', 'back', 'left', 'right', 'top', 'bottom')),
    kind TEXT NOT NULL CHECK (kind IN ('panel', 'webbing')),
    stock INTEGER NOT NULL REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    use TEXT NOT NULL CHECK (use IN ('covering', 'structure', 'back', 'seat', 'deck')),
    u INTEGER NOT NULL CHECK (u BETWEEN 0 AND 1920000),
    v INTEGER NOT NULL CHECK (v BETWEEN 0 AND 1920000),
    width INTEGER NOT NULL CHECK (width BETWEEN 0 AND 1920000),
    height INTEGER NOT NULL CHECK (height BETWEEN 0 AND 1920000),
    glued INTEGER NOT NULL CHECK (glued IN (0, 1)),
    loose INTEGER NOT NULL CHECK (loose IN (0, 1)),
    pitch INTEGER NOT NULL CHECK (pitch BETWEEN 0 AND 320000),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, box) REFERENCES box (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Members placed by hand.
CREATE TABLE member (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    box INTEGER NOT NULL,
    kind TEXT NOT NULL CHECK (kind IN ('rail', 'upright', 'cross', 'support', 'block')),
    axis TEXT NOT NULL CHECK (axis IN ('x', 'y', 'z')),
    x INTEGER NOT NULL CHECK (x BETWEEN 0 AND 1920000),
    y INTEGER NOT NULL CHECK (y BETWEEN 0 AND 1920000),
    z INTEGER NOT NULL CHECK (z BETWEEN 0 AND 1920000),
    length INTEGER NOT NULL CHECK (length BETWEEN 0 AND 1920000),
    stick INTEGER REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    stick_set TEXT NOT NULL CHECK (stick_set IN ('on_edge', 'flat')),
    name TEXT NOT NULL CHECK (length(name) <= 20),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, box) REFERENCES box (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Points of an outline, in the order of rank.
CREATE TABLE outline_point (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    box INTEGER NOT NULL,
    rank INTEGER NOT NULL CHECK (rank BETWEEN 0 AND 1000),
    u INTEGER NOT NULL CHECK (u BETWEEN 0 AND 1920000),
    v INTEGER NOT NULL CHECK (v BETWEEN 0 AND 1920000),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, box) REFERENCES box (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Holes for sockets, cables, hands.
CREATE TABLE cutout (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    box INTEGER NOT NULL,
    side TEXT NOT NULL CHECK (side IN ('front', 'back', 'left', 'right', 'top', 'bottom')),
    u INTEGER NOT NULL CHECK (u BETWEEN 0 AND 1920000),
    v INTEGER NOT NULL CHECK (v BETWEEN 0 AND 1920000),
    width INTEGER NOT NULL CHECK (width BETWEEN 0 AND 1920000),
    height INTEGER NOT NULL CHECK (height BETWEEN 0 AND 1920000),
    purpose TEXT NOT NULL CHECK (length(purpose) <= 60),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, box) REFERENCES box (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Joined groups.
CREATE TABLE "group" (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 40),
    PRIMARY KEY (build, key)
) STRICT, WITHOUT ROWID;

-- Boxes of joined groups.
CREATE TABLE group_box (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    "group" INTEGER NOT NULL,
    box INTEGER NOT NULL,
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, "group") REFERENCES "group" (build, key)
        DEFERRABLE INITIALLY DEFERRED,
    FOREIGN KEY (build, box) REFERENCES box (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Covering layers, on one box or on one joined group; rank counts from the wood outward.
CREATE TABLE layer (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    box INTEGER,
    "group" INTEGER,
    kind TEXT NOT NULL CHECK (kind IN (
        'foam', 'batting', 'lining', 'cover', 'welt', 'outside_back', 'dust_cover', 'trim')),
    shape TEXT NOT NULL CHECK (shape IN ('slab', 'wrapped', 'sewn', 'flat', 'run')),
    side TEXT NOT NULL CHECK (side IN ('front', 'back', 'left', 'right', 'top', 'bottom')),
    both INTEGER NOT NULL CHECK (both IN (0, 1)),
    stock INTEGER NOT NULL REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    rank INTEGER NOT NULL CHECK (rank BETWEEN 0 AND 100),
    u INTEGER NOT NULL CHECK (u BETWEEN 0 AND 1920000),
    v INTEGER NOT NULL CHECK (v BETWEEN 0 AND 1920000),
    width INTEGER NOT NULL CHECK (width BETWEEN 0 AND 1920000),
    height INTEGER NOT NULL CHECK (height BETWEEN 0 AND 1920000),
    thickness INTEGER NOT NULL CHECK (thickness BETWEEN 0 AND 160000),
    "left" TEXT NOT NULL CHECK ("left" IN ('wrap', 'side', 'stop', 'sewn', 'open')),
    "right" TEXT NOT NULL CHECK ("right" IN ('wrap', 'side', 'stop', 'sewn', 'open')),
    top TEXT NOT NULL CHECK (top IN ('wrap', 'side', 'stop', 'sewn', 'open')),
    bottom TEXT NOT NULL CHECK (bottom IN ('wrap', 'side', 'stop', 'sewn', 'open')),
    land_box INTEGER,
    finish TEXT NOT NULL CHECK (finish IN ('raw', 'folded')),
    fixing TEXT NOT NULL CHECK (fixing IN ('alone', 'together')),
    direction TEXT NOT NULL CHECK (direction IN ('up', 'across')),
    seams INTEGER NOT NULL CHECK (seams IN (0, 1)),
    boxing INTEGER NOT NULL CHECK (boxing BETWEEN 0 AND 960000),
    note TEXT NOT NULL CHECK (length(note) <= 500),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, box) REFERENCES box (build, key)
        DEFERRABLE INITIALLY DEFERRED,
    FOREIGN KEY (build, "group") REFERENCES "group" (build, key)
        DEFERRABLE INITIALLY DEFERRED,
    FOREIGN KEY (build, land_box) REFERENCES box (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Edges of layers by hand.
CREATE TABLE layer_edge (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    layer INTEGER NOT NULL,
    edge TEXT NOT NULL CHECK (edge IN ('left', 'right', 'top', 'bottom')),
    class TEXT NOT NULL CHECK (class IN ('auto', 'free', 'trapped', 'opening', 'site')),
    landing INTEGER NOT NULL CHECK (landing BETWEEN 0 AND 320000),
    handle INTEGER NOT NULL CHECK (handle BETWEEN 0 AND 320000),
    pitch INTEGER NOT NULL CHECK (pitch BETWEEN 0 AND 320000),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, layer) REFERENCES layer (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Tufting fields.
CREATE TABLE tufting (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    layer INTEGER NOT NULL,
    pattern TEXT NOT NULL CHECK (pattern IN ('diamond', 'square', 'shallow')),
    across INTEGER NOT NULL CHECK (across BETWEEN 1 AND 100),
    down INTEGER NOT NULL CHECK (down BETWEEN 1 AND 100),
    border INTEGER NOT NULL CHECK (border BETWEEN 0 AND 320000),
    pull INTEGER NOT NULL CHECK (pull BETWEEN 0 AND 96000),
    button INTEGER REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    cord INTEGER REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, layer) REFERENCES layer (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Joins of two boxes, or of a box and something else: `target` says which of box_b, object,
-- other_build and other_box counts.
CREATE TABLE "join" (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 20),
    box_a INTEGER NOT NULL,
    side_a TEXT NOT NULL CHECK (side_a IN ('front', 'back', 'left', 'right', 'top', 'bottom')),
    target TEXT NOT NULL CHECK (target IN ('box', 'wall', 'floor', 'object', 'other_build')),
    box_b INTEGER,
    side_b TEXT NOT NULL CHECK (side_b IN ('front', 'back', 'left', 'right', 'top', 'bottom')),
    object INTEGER,
    other_build TEXT NOT NULL CHECK (length(other_build) <= 60),
    other_box TEXT NOT NULL CHECK (length(other_box) <= 20),
    offset_u INTEGER NOT NULL CHECK (offset_u BETWEEN -1920000 AND 1920000),
    offset_v INTEGER NOT NULL CHECK (offset_v BETWEEN -1920000 AND 1920000),
    fastener TEXT NOT NULL CHECK (fastener IN ('screw', 'bolt', 'rest')),
    stock INTEGER REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    head TEXT NOT NULL CHECK (head IN ('free', 'a', 'b')),
    place TEXT NOT NULL CHECK (place IN ('bench', 'site')),
    treatment TEXT NOT NULL CHECK (treatment IN ('open', 'pierced')),
    optional INTEGER NOT NULL CHECK (optional IN (0, 1)),
    count INTEGER NOT NULL CHECK (count BETWEEN 0 AND 200),
    pitch INTEGER NOT NULL CHECK (pitch BETWEEN 0 AND 960000),
    "end" INTEGER NOT NULL CHECK ("end" BETWEEN 0 AND 320000),
    cloth INTEGER NOT NULL CHECK (cloth BETWEEN 0 AND 32000),
    note TEXT NOT NULL CHECK (length(note) <= 500),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, box_a) REFERENCES box (build, key)
        DEFERRABLE INITIALLY DEFERRED,
    FOREIGN KEY (build, box_b) REFERENCES box (build, key)
        DEFERRABLE INITIALLY DEFERRED,
    FOREIGN KEY (build, object) REFERENCES object (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Attachment points by hand.
CREATE TABLE point (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    "join" INTEGER NOT NULL,
    u INTEGER NOT NULL CHECK (u BETWEEN 0 AND 1920000),
    v INTEGER NOT NULL CHECK (v BETWEEN 0 AND 1920000),
    existing INTEGER NOT NULL CHECK (existing IN (0, 1)),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, "join") REFERENCES "join" (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Openings by hand.
CREATE TABLE opening (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    layer INTEGER NOT NULL,
    edge TEXT NOT NULL CHECK (edge IN ('left', 'right', 'top', 'bottom')),
    "begin" INTEGER NOT NULL CHECK ("begin" BETWEEN 0 AND 1920000),
    length INTEGER NOT NULL CHECK (length BETWEEN 0 AND 1920000),
    "join" INTEGER,
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, layer) REFERENCES layer (build, key)
        DEFERRABLE INITIALLY DEFERRED,
    FOREIGN KEY (build, "join") REFERENCES "join" (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Fittings.
CREATE TABLE fitting (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    box INTEGER NOT NULL,
    kind TEXT NOT NULL CHECK (kind IN (
        'leg', 'glide', 'hinge', 'stay', 'cleat', 't_nut', 'bracket', 'button', 'zip', 'other')),
    name TEXT NOT NULL CHECK (length(name) <= 60),
    stock INTEGER REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    side TEXT NOT NULL CHECK (side IN ('front', 'back', 'left', 'right', 'top', 'bottom')),
    u INTEGER NOT NULL CHECK (u BETWEEN 0 AND 1920000),
    v INTEGER NOT NULL CHECK (v BETWEEN 0 AND 1920000),
    length INTEGER NOT NULL CHECK (length BETWEEN 0 AND 1920000),
    count INTEGER NOT NULL CHECK (count BETWEEN 0 AND 1000),
    screw INTEGER REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    screws INTEGER NOT NULL CHECK (screws BETWEEN 0 AND 1000),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, box) REFERENCES box (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- What else is bought.
CREATE TABLE extra (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    what TEXT NOT NULL CHECK (length(what) BETWEEN 1 AND 120),
    stock INTEGER REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    count INTEGER NOT NULL CHECK (count BETWEEN 0 AND 1000000),
    price INTEGER NOT NULL CHECK (price BETWEEN 0 AND 1000000000000),
    aisle TEXT NOT NULL CHECK (aisle IN (
        'lumber', 'sheets', 'fasteners', 'soft_goods', 'cloth', 'trim', 'adhesives', 'hardware')),
    PRIMARY KEY (build, key)
) STRICT, WITHOUT ROWID;

-- Spend.
CREATE TABLE spend (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    dated TEXT NOT NULL CHECK (length(dated) = 10),
    amount INTEGER NOT NULL CHECK (amount BETWEEN -1000000000000 AND 1000000000000),
    tax INTEGER NOT NULL CHECK (tax BETWEEN -1000000000000 AND 1000000000000),
    what TEXT NOT NULL CHECK (length(what) BETWEEN 1 AND 120),
    count INTEGER NOT NULL CHECK (count BETWEEN 0 AND 1000000),
    stock INTEGER REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    aisle TEXT NOT NULL CHECK (aisle IN (
        'lumber', 'sheets', 'fasteners', 'soft_goods', 'cloth', 'trim', 'adhesives', 'hardware')),
    supplier TEXT NOT NULL CHECK (length(supplier) <= 60),
    note TEXT NOT NULL CHECK (length(note) <= 500),
    PRIMARY KEY (build, key)
) STRICT, WITHOUT ROWID;

-- ---- what was taken: done at the bench, and facts from then on ----

-- Steps done; `step` is the step's lasting name.
CREATE TABLE tick (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    step TEXT NOT NULL CHECK (length(step) BETWEEN 1 AND 80),
    at TEXT NOT NULL CHECK (length(at) <= 20),
    minutes INTEGER NOT NULL CHECK (minutes BETWEEN 0 AND 100000000),
    content TEXT NOT NULL CHECK (length(content) <= 16),
    note TEXT NOT NULL CHECK (length(note) <= 500),
    PRIMARY KEY (build, key)
) STRICT, WITHOUT ROWID;

-- Measures taken.
CREATE TABLE measure (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    tick INTEGER,
    box INTEGER,
    stock INTEGER REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    what TEXT NOT NULL CHECK (length(what) BETWEEN 1 AND 40),
    value INTEGER NOT NULL CHECK (value BETWEEN 0 AND 6400000),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, tick) REFERENCES tick (build, key)
        DEFERRABLE INITIALLY DEFERRED,
    FOREIGN KEY (build, box) REFERENCES box (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Holes drilled.
CREATE TABLE hole (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    tick INTEGER NOT NULL,
    "join" INTEGER NOT NULL,
    rank INTEGER NOT NULL CHECK (rank BETWEEN 0 AND 1000),
    u INTEGER NOT NULL CHECK (u BETWEEN 0 AND 1920000),
    v INTEGER NOT NULL CHECK (v BETWEEN 0 AND 1920000),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, tick) REFERENCES tick (build, key)
        DEFERRABLE INITIALLY DEFERRED,
    FOREIGN KEY (build, "join") REFERENCES "join" (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Parts cut.
CREATE TABLE cut_part (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    tick INTEGER NOT NULL,
    part TEXT NOT NULL CHECK (length(part) BETWEEN 1 AND 40),
    length INTEGER NOT NULL CHECK (length BETWEEN 0 AND 6400000),
    width INTEGER NOT NULL CHECK (width BETWEEN 0 AND 6400000),
    spoiled INTEGER NOT NULL CHECK (spoiled IN (0, 1)),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, tick) REFERENCES tick (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Optional joins left out.
CREATE TABLE left_out (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    "join" INTEGER NOT NULL,
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, "join") REFERENCES "join" (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- What was bought.
CREATE TABLE bought (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    tick INTEGER NOT NULL,
    stock INTEGER NOT NULL REFERENCES stock (key) DEFERRABLE INITIALLY DEFERRED,
    length INTEGER NOT NULL CHECK (length BETWEEN 0 AND 32000000),
    width INTEGER NOT NULL CHECK (width BETWEEN 0 AND 3200000),
    packs INTEGER NOT NULL CHECK (packs BETWEEN 0 AND 1000000),
    PRIMARY KEY (build, key),
    FOREIGN KEY (build, tick) REFERENCES tick (build, key)
        DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

-- Cutting layouts taken, by the digest of the cutting job they answer.
CREATE TABLE layout (
    build INTEGER NOT NULL REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    key INTEGER NOT NULL CHECK (key > 0),
    job TEXT NOT NULL CHECK (length(job) BETWEEN 1 AND 16),
    content TEXT NOT NULL CHECK (length(content) BETWEEN 1 AND 100000),
    PRIMARY KEY (build, key)
) STRICT, WITHOUT ROWID;

-- ---- not facts ----

-- What was done, for undo and redo: one row an action, numbered without gaps. `changeset` is what
-- SQLite's session extension recorded of it; inverted, it undoes the action, and it applies only
-- where the rows are still as the action left them. Undone rows are those with the largest
-- numbers; the next action drops them. `build` is 0 for an action on the workshop alone, and no
-- foreign key, since the build may be gone.
CREATE TABLE history (
    sequence INTEGER NOT NULL PRIMARY KEY,
    undone INTEGER NOT NULL CHECK (undone IN (0, 1)),
    build INTEGER NOT NULL CHECK (build >= 0),
    label TEXT NOT NULL,
    recorded INTEGER NOT NULL, -- seconds since 1970
    changeset BLOB NOT NULL
) STRICT;

-- A cache for the list of builds, worked out from a plan: it may be emptied at any time. `digest`
-- is that of the facts and of the engine that made the plan.
CREATE TABLE summary (
    build INTEGER NOT NULL PRIMARY KEY REFERENCES build (key) ON DELETE CASCADE
        DEFERRABLE INITIALLY DEFERRED,
    digest INTEGER NOT NULL,
    estimate INTEGER NOT NULL,
    steps_done INTEGER NOT NULL CHECK (steps_done >= 0),
    steps_total INTEGER NOT NULL CHECK (steps_total >= steps_done),
    next_step TEXT NOT NULL
) STRICT;
