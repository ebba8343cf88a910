-- What a flag said when it was answered, so that it can be set beside what it says later, and how urgent it was, so that a
-- dismissed one comes back only if it gets worse. Of earlier decisions neither is known.
ALTER TABLE decision ADD COLUMN severity TEXT CHECK (severity IN ('low', 'medium', 'high'));
ALTER TABLE decision ADD COLUMN said TEXT NOT NULL DEFAULT '';
