-- The book, version 1. Keys of choices (unit, kind, ...) are the ones in the EnumText tables of core/domain.
-- Decimal numbers that a person typed are TEXT, so that 42.50 stays 42.50. Dates are ISO 8601.

CREATE TABLE book_info (
    key TEXT PRIMARY KEY NOT NULL,
    value TEXT NOT NULL
) STRICT;

CREATE TABLE muscle (
    id INTEGER PRIMARY KEY,
    key TEXT NOT NULL UNIQUE,
    name TEXT NOT NULL
) STRICT;

CREATE TABLE exercise (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    name TEXT NOT NULL UNIQUE CHECK (length(name) BETWEEN 1 AND 120),
    hidden INTEGER NOT NULL DEFAULT 0 CHECK (hidden IN (0, 1))
) STRICT;

CREATE TABLE exercise_muscle (
    id INTEGER PRIMARY KEY,
    exercise_id INTEGER NOT NULL REFERENCES exercise (id) ON DELETE CASCADE,
    muscle_id INTEGER NOT NULL REFERENCES muscle (id),
    share REAL NOT NULL CHECK (share > 0 AND share <= 1),
    UNIQUE (exercise_id, muscle_id)
) STRICT;

CREATE TABLE grip (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    name TEXT NOT NULL UNIQUE CHECK (length(name) BETWEEN 1 AND 120),
    orientation TEXT,
    spacing TEXT,
    spacing_mm INTEGER CHECK (spacing_mm BETWEEN 10 AND 2200)
) STRICT;

CREATE TABLE variant (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    exercise_id INTEGER NOT NULL REFERENCES exercise (id),
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
    implement TEXT NOT NULL,
    position TEXT NOT NULL,
    path TEXT NOT NULL,
    loading TEXT NOT NULL,
    bar_mass TEXT,
    step TEXT,
    back_loading TEXT NOT NULL,
    sides TEXT NOT NULL,
    travel TEXT NOT NULL,
    band_low INTEGER NOT NULL CHECK (band_low >= 1),
    band_high INTEGER NOT NULL CHECK (band_high >= band_low),
    usual_grip_id INTEGER REFERENCES grip (id),
    is_default INTEGER NOT NULL DEFAULT 0 CHECK (is_default IN (0, 1)),
    hidden INTEGER NOT NULL DEFAULT 0 CHECK (hidden IN (0, 1)),
    UNIQUE (exercise_id, name)
) STRICT;
CREATE UNIQUE INDEX variant_one_default ON variant (exercise_id) WHERE is_default = 1;

CREATE TABLE gym (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    name TEXT NOT NULL UNIQUE CHECK (length(name) BETWEEN 1 AND 120),
    collar_pair TEXT
) STRICT;

CREATE TABLE gym_bar (
    id INTEGER PRIMARY KEY,
    gym_id INTEGER NOT NULL REFERENCES gym (id) ON DELETE CASCADE,
    name TEXT NOT NULL,
    implement TEXT NOT NULL,
    mass TEXT NOT NULL
) STRICT;
CREATE INDEX gym_bar_gym ON gym_bar (gym_id);

CREATE TABLE gym_plate (
    id INTEGER PRIMARY KEY,
    gym_id INTEGER NOT NULL REFERENCES gym (id) ON DELETE CASCADE,
    plate TEXT NOT NULL,
    pairs INTEGER NOT NULL CHECK (pairs >= 1)
) STRICT;
CREATE INDEX gym_plate_gym ON gym_plate (gym_id);

-- Runs of equal steps: rows of dumbbells and weight stacks.
CREATE TABLE gym_run (
    id INTEGER PRIMARY KEY,
    gym_id INTEGER NOT NULL REFERENCES gym (id) ON DELETE CASCADE,
    kind TEXT NOT NULL CHECK (kind IN ('dumbbells', 'stack')),
    name TEXT NOT NULL,
    first TEXT NOT NULL,
    step TEXT NOT NULL,
    last TEXT NOT NULL
) STRICT;
CREATE INDEX gym_run_gym ON gym_run (gym_id);

CREATE TABLE athlete (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    name TEXT NOT NULL UNIQUE CHECK (length(name) BETWEEN 1 AND 120),
    born TEXT,
    sex TEXT,
    height_mm INTEGER,
    shoulder_breadth_mm INTEGER,
    upper_arm_mm INTEGER,
    forearm_mm INTEGER,
    experience TEXT NOT NULL,
    unit TEXT NOT NULL CHECK (unit IN ('kg', 'lb')),
    gym_id INTEGER REFERENCES gym (id),
    training_group TEXT NOT NULL DEFAULT '',
    days_per_week INTEGER,
    minutes_per_day INTEGER,
    joint_history TEXT NOT NULL DEFAULT '',
    note TEXT NOT NULL DEFAULT '',
    archived INTEGER NOT NULL DEFAULT 0 CHECK (archived IN (0, 1))
) STRICT;

CREATE TABLE athlete_aim (
    id INTEGER PRIMARY KEY,
    athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
    muscle_id INTEGER NOT NULL REFERENCES muscle (id),
    weekly_sets_low INTEGER NOT NULL,
    weekly_sets_high INTEGER NOT NULL,
    UNIQUE (athlete_id, muscle_id)
) STRICT;

CREATE TABLE body_mass (
    id INTEGER PRIMARY KEY,
    athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
    date TEXT NOT NULL,
    mass TEXT NOT NULL,
    UNIQUE (athlete_id, date)
) STRICT;

CREATE TABLE rep_standard (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    variant_id INTEGER NOT NULL REFERENCES variant (id),
    athlete_id INTEGER REFERENCES athlete (id) ON DELETE CASCADE,
    name TEXT NOT NULL CHECK (length(name) BETWEEN 1 AND 120),
    start TEXT NOT NULL,
    finish TEXT NOT NULL,
    path TEXT NOT NULL,
    body TEXT NOT NULL,
    lowering TEXT NOT NULL,
    least_travel_percent INTEGER CHECK (least_travel_percent BETWEEN 1 AND 100),
    is_default INTEGER NOT NULL DEFAULT 0 CHECK (is_default IN (0, 1))
) STRICT;
CREATE UNIQUE INDEX rep_standard_name ON rep_standard (variant_id, coalesce(athlete_id, 0), name);

CREATE TABLE lift_line (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    athlete_id INTEGER NOT NULL REFERENCES athlete (id),
    variant_id INTEGER NOT NULL REFERENCES variant (id),
    grip_id INTEGER NOT NULL REFERENCES grip (id),
    standard_id INTEGER NOT NULL REFERENCES rep_standard (id),
    UNIQUE (athlete_id, variant_id, grip_id, standard_id)
) STRICT;

CREATE TABLE session (
    id INTEGER PRIMARY KEY,
    athlete_id INTEGER NOT NULL REFERENCES athlete (id),
    date TEXT NOT NULL CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    UNIQUE (athlete_id, date)
) STRICT;

CREATE TABLE set_entry (
    id INTEGER PRIMARY KEY,
    session_id INTEGER NOT NULL REFERENCES session (id),
    line_id INTEGER NOT NULL REFERENCES lift_line (id),
    position INTEGER NOT NULL CHECK (position >= 1),
    number INTEGER NOT NULL CHECK (number >= 1),
    load TEXT NOT NULL,
    unit TEXT NOT NULL CHECK (unit IN ('kg', 'lb')),
    reps INTEGER NOT NULL CHECK (reps BETWEEN 0 AND 200),
    off INTEGER CHECK (off BETWEEN 0 AND reps),
    failed INTEGER NOT NULL DEFAULT 0 CHECK (failed IN (0, 1)),
    rir TEXT,
    rpe TEXT,
    marks TEXT,
    lowering_s TEXT,
    kind TEXT NOT NULL DEFAULT 'work',
    note TEXT,
    CHECK (rir IS NULL OR rpe IS NULL)
) STRICT;
CREATE UNIQUE INDEX set_entry_place ON set_entry (session_id, line_id, number);

-- What a set said before an edit or a removal. `was` is the set as one JSON object.
CREATE TABLE set_replaced (
    id INTEGER PRIMARY KEY,
    session_id INTEGER NOT NULL REFERENCES session (id),
    line_id INTEGER NOT NULL REFERENCES lift_line (id),
    set_id INTEGER NOT NULL,
    replaced_at TEXT NOT NULL,
    change TEXT NOT NULL CHECK (change IN ('edited', 'removed')),
    was TEXT NOT NULL
) STRICT;
CREATE INDEX set_replaced_session ON set_replaced (session_id);

CREATE TABLE exercise_rating (
    id INTEGER PRIMARY KEY,
    session_id INTEGER NOT NULL REFERENCES session (id),
    line_id INTEGER NOT NULL REFERENCES lift_line (id),
    tension INTEGER CHECK (tension BETWEEN 0 AND 10),
    burn INTEGER CHECK (burn BETWEEN 0 AND 10),
    pump INTEGER CHECK (pump BETWEEN 0 AND 10),
    gave_out TEXT,
    elbow INTEGER CHECK (elbow BETWEEN 0 AND 10),
    shoulder INTEGER CHECK (shoulder BETWEEN 0 AND 10),
    wrist INTEGER CHECK (wrist BETWEEN 0 AND 10),
    lower_back INTEGER CHECK (lower_back BETWEEN 0 AND 10),
    hip INTEGER CHECK (hip BETWEEN 0 AND 10),
    knee INTEGER CHECK (knee BETWEEN 0 AND 10),
    neck INTEGER CHECK (neck BETWEEN 0 AND 10),
    ankle INTEGER CHECK (ankle BETWEEN 0 AND 10),
    next_soreness INTEGER CHECK (next_soreness BETWEEN 0 AND 10),
    next_weakness INTEGER CHECK (next_weakness BETWEEN 0 AND 10),
    UNIQUE (session_id, line_id)
) STRICT;

CREATE TABLE decision (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    athlete_id INTEGER NOT NULL REFERENCES athlete (id),
    line_id INTEGER REFERENCES lift_line (id),
    rule TEXT NOT NULL,
    kind TEXT NOT NULL,
    made_on TEXT NOT NULL,
    until TEXT,
    action TEXT NOT NULL DEFAULT '',
    reason TEXT NOT NULL DEFAULT ''
) STRICT;
CREATE INDEX decision_athlete ON decision (athlete_id);

CREATE TABLE rule_setting (
    id INTEGER PRIMARY KEY,
    rule TEXT NOT NULL,
    name TEXT NOT NULL,
    value REAL NOT NULL,
    UNIQUE (rule, name)
) STRICT;

CREATE TABLE block (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    athlete_id INTEGER NOT NULL REFERENCES athlete (id),
    name TEXT NOT NULL,
    aim TEXT NOT NULL DEFAULT '',
    start TEXT NOT NULL
) STRICT;
CREATE INDEX block_athlete ON block (athlete_id);

CREATE TABLE block_week (
    id INTEGER PRIMARY KEY,
    block_id INTEGER NOT NULL REFERENCES block (id) ON DELETE CASCADE,
    ordinal INTEGER NOT NULL,
    kind TEXT NOT NULL,
    UNIQUE (block_id, ordinal)
) STRICT;

CREATE TABLE block_day (
    id INTEGER PRIMARY KEY,
    week_id INTEGER NOT NULL REFERENCES block_week (id) ON DELETE CASCADE,
    ordinal INTEGER NOT NULL,
    date TEXT NOT NULL,
    title TEXT NOT NULL DEFAULT '',
    UNIQUE (week_id, ordinal)
) STRICT;

CREATE TABLE slot (
    id INTEGER PRIMARY KEY,
    day_id INTEGER NOT NULL REFERENCES block_day (id) ON DELETE CASCADE,
    ordinal INTEGER NOT NULL,
    variant_id INTEGER NOT NULL REFERENCES variant (id),
    grip_id INTEGER NOT NULL REFERENCES grip (id),
    standard_id INTEGER NOT NULL REFERENCES rep_standard (id),
    sets INTEGER NOT NULL CHECK (sets BETWEEN 1 AND 30),
    band_low INTEGER NOT NULL,
    band_high INTEGER NOT NULL,
    planned_rir TEXT,
    load TEXT,
    rest_s INTEGER,
    note TEXT NOT NULL DEFAULT '',
    UNIQUE (day_id, ordinal)
) STRICT;
