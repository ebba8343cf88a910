-- How bad the matter was when it was answered, in the measure of its own rule (weeks, percent, ...; more is worse), so that a
-- dismissed flag comes back when it got materially worse. Of earlier decisions it is not known.
ALTER TABLE decision ADD COLUMN measure REAL;
