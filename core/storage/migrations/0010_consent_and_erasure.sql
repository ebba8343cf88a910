-- Whether a lifter agreed that what they say of their health is kept: discomfort by joint, joint history. One row each time they
-- agreed; `wording` is the number of the text that they agreed to (core/domain/consent.h), `scope` the kinds of entry.
-- Who had such entries before anybody was asked gets a row with neither: to be confirmed, and shown until then.
CREATE TABLE health_consent (
    id INTEGER PRIMARY KEY,
    athlete_id INTEGER NOT NULL REFERENCES athlete (id) ON DELETE CASCADE,
    given_on TEXT CHECK (given_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    wording INTEGER NOT NULL CHECK (wording >= 0),
    scope TEXT NOT NULL,
    withdrawn_on TEXT CHECK (withdrawn_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    note TEXT NOT NULL DEFAULT '',
    CHECK ((given_on IS NULL) = (wording = 0))
) STRICT;
CREATE INDEX health_consent_athlete ON health_consent (athlete_id);
INSERT INTO health_consent (athlete_id, wording, scope)
SELECT a.id, 0, 'discomfort joint_history' FROM athlete a
WHERE a.joint_history <> ''
    OR EXISTS (
        SELECT 1 FROM session s JOIN exercise_rating r ON r.session_id = s.id
        WHERE s.athlete_id = a.id
            AND coalesce(r.elbow, r.shoulder, r.wrist, r.lower_back, r.hip, r.knee, r.neck, r.ankle) IS NOT NULL)
ORDER BY a.id;

-- Who was erased, so that a backup that still has them loses them again. `mark` is made from the athlete's random uuid and
-- can't be turned back into it; no name, nothing of the record.
CREATE TABLE erased_athlete (
    id INTEGER PRIMARY KEY,
    mark TEXT NOT NULL UNIQUE,
    erased_at TEXT NOT NULL
) STRICT;
