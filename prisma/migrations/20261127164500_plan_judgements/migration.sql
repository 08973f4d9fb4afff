-- What the latest plan of a run comes to as it stands, judged anew as hours, other runs or lessons have changed. Derived: a row
-- that is missing, or of an earlier plan, says that the plan comes to what it was stored with.
CREATE TABLE plan_judgement (
    workshop_id uuid NOT NULL,
    run_id uuid NOT NULL,
    -- The plan that was judged.
    revision_id uuid NOT NULL,
    -- Digest of all that the judgement rests on.
    basis text NOT NULL,
    judgement jsonb NOT NULL,
    PRIMARY KEY (workshop_id, run_id),
    FOREIGN KEY (workshop_id, run_id) REFERENCES run ON DELETE RESTRICT ON UPDATE RESTRICT
);
