-- Numbers of readings that were fitted to the roster's record. Rows are only ever added, so that it can be said with which
-- numbers a reading of any day was made. `body` is one JSON object: number by name.
CREATE TABLE reading_parameters (
    version INTEGER PRIMARY KEY CHECK (version >= 1),
    fitted_on TEXT NOT NULL CHECK (fitted_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    lines INTEGER NOT NULL CHECK (lines >= 0),
    sets INTEGER NOT NULL CHECK (sets >= 0),
    log_likelihood_before REAL NOT NULL,
    log_likelihood_after REAL NOT NULL,
    body TEXT NOT NULL
) STRICT;
