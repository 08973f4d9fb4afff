-- Kinds of stages now bring waits of their own. A run that is at hand keeps the times it was planned with: its copy of the
-- design says that it takes the waits for firmness alone, as before. Designs of the library take all of them.
UPDATE run
SET snapshot = jsonb_set(snapshot, '{design,adds}', '"firmness"')
WHERE snapshot -> 'design' IS NOT NULL;
