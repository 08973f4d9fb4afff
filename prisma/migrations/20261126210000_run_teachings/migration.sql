-- What the log of a run teaches, worked out from it: kept, so that a plan need not read the logs of all runs. A row that is
-- missing, or older than the rules or the log, is made anew from these.
CREATE TABLE run_teaching (
    workshop_id uuid NOT NULL,
    run_id uuid NOT NULL,
    -- Names the rules, and the room, by which it was worked out.
    basis text NOT NULL,
    -- Rises within the workshop: whoever has seen the highest has seen the latest.
    version integer NOT NULL CHECK (version >= 1),
    -- The last entry of the log that it knows of.
    through bigint NOT NULL,
    teachings jsonb NOT NULL,
    PRIMARY KEY (workshop_id, run_id),
    FOREIGN KEY (workshop_id, run_id) REFERENCES run ON DELETE RESTRICT ON UPDATE RESTRICT
);
CREATE INDEX run_teaching_workshop_id_version_idx ON run_teaching (workshop_id, version);
CREATE INDEX run_teaching_workshop_id_through_idx ON run_teaching (workshop_id, through);
CREATE INDEX bench_log_workshop_id_sequence_idx ON bench_log (workshop_id, sequence);
