-- What a block needs to be built and to go on: how a slot progresses, what is done in turns, whose load stands; what an easier
-- week takes off; sets by muscle, minutes and days off of the block. A block without an athlete is a template: the shape alone,
-- its days counted from one fixed Monday (kTemplateStart). That is why the table is rebuilt: athlete_id may be NULL now.
CREATE TABLE block_new (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE,
    athlete_id INTEGER REFERENCES athlete (id),
    name TEXT NOT NULL,
    aim TEXT NOT NULL DEFAULT '',
    start TEXT NOT NULL,
    minutes_per_day INTEGER CHECK (minutes_per_day BETWEEN 1 AND 600),
    easing_sets_percent INTEGER NOT NULL DEFAULT 50 CHECK (easing_sets_percent BETWEEN 1 AND 100),
    easing_load_percent INTEGER NOT NULL DEFAULT 90 CHECK (easing_load_percent BETWEEN 1 AND 100),
    easing_reserve INTEGER NOT NULL DEFAULT 2 CHECK (easing_reserve BETWEEN 0 AND 10)
) STRICT;
INSERT INTO block_new (id, uuid, athlete_id, name, aim, start) SELECT id, uuid, athlete_id, name, aim, start FROM block;
DROP TABLE block;
ALTER TABLE block_new RENAME TO block;
CREATE INDEX block_athlete ON block (athlete_id);

CREATE TABLE block_aim (
    id INTEGER PRIMARY KEY,
    block_id INTEGER NOT NULL REFERENCES block (id) ON DELETE CASCADE,
    muscle_id INTEGER NOT NULL REFERENCES muscle (id),
    weekly_sets_low INTEGER NOT NULL,
    weekly_sets_high INTEGER NOT NULL,
    UNIQUE (block_id, muscle_id)
) STRICT;

CREATE TABLE block_days_off (
    id INTEGER PRIMARY KEY,
    block_id INTEGER NOT NULL REFERENCES block (id) ON DELETE CASCADE,
    first TEXT NOT NULL,
    last TEXT NOT NULL CHECK (last >= first),
    reason TEXT NOT NULL DEFAULT '',
    UNIQUE (block_id, first)
) STRICT;

ALTER TABLE slot ADD COLUMN progression TEXT NOT NULL DEFAULT '';
ALTER TABLE slot ADD COLUMN superset INTEGER NOT NULL DEFAULT 0 CHECK (superset BETWEEN 0 AND 9);
ALTER TABLE slot ADD COLUMN load_locked INTEGER NOT NULL DEFAULT 0 CHECK (load_locked IN (0, 1));

-- Small plates that lie on a stack, each used or not: '1.25 kg; 2.5 kg'.
ALTER TABLE gym_run ADD COLUMN add_ons TEXT NOT NULL DEFAULT '';
