-- The repetitions of a set one by one, as they were typed, tapped or measured. Decimal numbers are TEXT, as everywhere. What a
-- source doesn't tell is NULL. Heights are of the load over the lowest point it ever had, so that it can be said at which
-- end a repetition was short.
CREATE TABLE repetition (
    id INTEGER PRIMARY KEY,
    set_id INTEGER NOT NULL REFERENCES set_entry (id) ON DELETE CASCADE,
    number INTEGER NOT NULL CHECK (number BETWEEN 1 AND 200),
    source TEXT NOT NULL CHECK (source IN ('typed', 'tapped', 'measured')),
    travel_mm TEXT,
    low_mm TEXT,
    high_mm TEXT,
    lifting_s TEXT,
    lowering_s TEXT,
    marks TEXT,
    part_way INTEGER NOT NULL DEFAULT 0 CHECK (part_way IN (0, 1)),
    UNIQUE (set_id, number)
) STRICT;

-- What a tape said, at which place of the body.
CREATE TABLE measurement (
    id INTEGER PRIMARY KEY,
    athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
    date TEXT NOT NULL CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    place TEXT NOT NULL,
    value TEXT NOT NULL,
    unit TEXT NOT NULL CHECK (unit IN ('cm', 'in')),
    UNIQUE (athlete_id, date, place)
) STRICT;

-- The history of edits, so that undo and redo survive a restart: written in the transaction of the edit itself. No content of
-- the book, and never part of what is exported or compared.
CREATE TABLE edit_step (
    id INTEGER PRIMARY KEY,
    label TEXT NOT NULL,
    made_at TEXT NOT NULL,
    changeset BLOB NOT NULL,
    changes TEXT NOT NULL,
    undone INTEGER NOT NULL DEFAULT 0 CHECK (undone IN (0, 1))
) STRICT;
