-- The coach's own words for a lifter, in the order they were typed (that of the ids).
CREATE TABLE athlete_tag (
    id INTEGER PRIMARY KEY,
    athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
    tag TEXT NOT NULL CHECK (length(tag) BETWEEN 1 AND 40),
    UNIQUE (athlete_id, tag)
) STRICT;
