-- The stages, parts and batches of a plan stand in the document of its revision, which never changes. Nothing reads the
-- copies in rows, and writing them made up most of the time for which a workshop is held.
DROP TABLE stage;
DROP TABLE batch;
DROP TABLE part;

-- The few runs of a workshop that need hands and moulds, among the many that are over.
CREATE INDEX run_live ON run (workshop_id) WHERE state IN ('planned', 'making');
