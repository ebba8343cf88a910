-- The backward lean of a set as it was measured, in degrees from upright; TEXT as every number that a person typed.
ALTER TABLE set_entry ADD COLUMN lean_deg TEXT;
