-- An answer that is kept for a repeated request names the plan that it shows, which stands in its revision already. Answers
-- from before this hold the plan themselves.
ALTER TABLE idempotency_key
    ADD COLUMN revision_id uuid,
    ADD FOREIGN KEY (workshop_id, revision_id) REFERENCES plan_revision ON DELETE RESTRICT ON UPDATE RESTRICT;
CREATE INDEX idempotency_key_workshop_id_revision_id_idx ON idempotency_key (workshop_id, revision_id);
