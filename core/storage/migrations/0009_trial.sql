-- Trials: arms, outcomes that weigh, the drawn days with what became of them, looks before the end. Places count from 1; `arm`,
-- `arm_done` and `choice` are the ordinal of a trial_arm. A variant, grip or standard that a trial names can't be taken from the
-- library, as with slots. An athlete's trials go with the athlete.
CREATE TABLE trial (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
    question TEXT NOT NULL CHECK (length(question) >= 1),
    designed_on TEXT NOT NULL CHECK (designed_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    factor TEXT NOT NULL,
    why_more_than_one TEXT NOT NULL DEFAULT '',
    limit_rating INTEGER NOT NULL CHECK (limit_rating BETWEEN 1 AND 10),
    limit_sessions INTEGER NOT NULL CHECK (limit_sessions >= 1),
    sets INTEGER NOT NULL CHECK (sets BETWEEN 1 AND 30),
    planned_rir TEXT,
    days_between INTEGER NOT NULL CHECK (days_between >= 1),
    blocks INTEGER NOT NULL CHECK (blocks BETWEEN 1 AND 50),
    seed INTEGER NOT NULL,
    ended_on TEXT CHECK (ended_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    end_kind TEXT,
    end_reason TEXT NOT NULL DEFAULT '',
    choice INTEGER CHECK (choice >= 1),
    CHECK ((ended_on IS NULL) = (end_kind IS NULL)),
    CHECK (ended_on IS NOT NULL OR (end_reason = '' AND choice IS NULL))
) STRICT;
CREATE INDEX trial_athlete ON trial (athlete_id);

CREATE TABLE trial_arm (
    id INTEGER PRIMARY KEY,
    trial_id INTEGER NOT NULL REFERENCES trial (id) ON DELETE CASCADE,
    ordinal INTEGER NOT NULL CHECK (ordinal BETWEEN 1 AND 4),
    variant_id INTEGER NOT NULL REFERENCES variant (id),
    grip_id INTEGER NOT NULL REFERENCES grip (id),
    standard_id INTEGER NOT NULL REFERENCES rep_standard (id),
    band_low INTEGER NOT NULL CHECK (band_low >= 1),
    band_high INTEGER NOT NULL CHECK (band_high >= band_low),
    lowering_s TEXT,
    run_in INTEGER NOT NULL DEFAULT 0 CHECK (run_in BETWEEN 0 AND 20),
    UNIQUE (trial_id, ordinal)
) STRICT;

CREATE TABLE trial_outcome (
    id INTEGER PRIMARY KEY,
    trial_id INTEGER NOT NULL REFERENCES trial (id) ON DELETE CASCADE,
    ordinal INTEGER NOT NULL CHECK (ordinal >= 1),
    key TEXT NOT NULL CHECK (length(key) >= 1),
    weight REAL NOT NULL CHECK (weight >= 0),
    UNIQUE (trial_id, ordinal)
) STRICT;

CREATE TABLE trial_day (
    id INTEGER PRIMARY KEY,
    trial_id INTEGER NOT NULL REFERENCES trial (id) ON DELETE CASCADE,
    ordinal INTEGER NOT NULL CHECK (ordinal >= 1),
    date TEXT NOT NULL CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    block INTEGER NOT NULL CHECK (block >= 0),
    arm INTEGER NOT NULL CHECK (arm BETWEEN 1 AND 4),
    arm_done INTEGER CHECK (arm_done BETWEEN 1 AND 4),
    missed INTEGER NOT NULL DEFAULT 0 CHECK (missed IN (0, 1)),
    note TEXT NOT NULL DEFAULT '',
    UNIQUE (trial_id, ordinal),
    CHECK (missed = 0 OR arm_done IS NULL)
) STRICT;

CREATE TABLE trial_look (
    id INTEGER PRIMARY KEY,
    trial_id INTEGER NOT NULL REFERENCES trial (id) ON DELETE CASCADE,
    ordinal INTEGER NOT NULL CHECK (ordinal >= 1),
    date TEXT NOT NULL CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    sessions_done INTEGER NOT NULL CHECK (sessions_done >= 0),
    UNIQUE (trial_id, ordinal)
) STRICT;
