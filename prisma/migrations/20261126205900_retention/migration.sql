-- Superseded plans may go after a while, but only to the clearing that says what it is, and never the latest of a run.
DROP TRIGGER plan_revision_immutable ON plan_revision;

CREATE FUNCTION refuse_change_but_clearing() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF TG_OP = 'DELETE' AND current_setting('benchtide.clearing', true) = 'on' THEN
        RETURN NULL;
    END IF;
    RAISE EXCEPTION 'rows of % are never changed or removed: % refused', TG_TABLE_NAME, TG_OP
        USING ERRCODE = 'restrict_violation';
END
$$;

CREATE FUNCTION refuse_losing_latest() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF EXISTS (SELECT 1 FROM plan_revision
               WHERE workshop_id = OLD.workshop_id AND run_id = OLD.run_id AND number > OLD.number) THEN
        RETURN OLD;
    END IF;
    RAISE EXCEPTION 'the latest plan of a run stays: DELETE refused' USING ERRCODE = 'restrict_violation';
END
$$;

CREATE TRIGGER plan_revision_immutable BEFORE UPDATE OR DELETE OR TRUNCATE ON plan_revision
    FOR EACH STATEMENT EXECUTE FUNCTION refuse_change_but_clearing();
CREATE TRIGGER plan_revision_latest_stays BEFORE DELETE ON plan_revision
    FOR EACH ROW EXECUTE FUNCTION refuse_losing_latest();

CREATE INDEX nudge_workshop_id_revision_id_idx ON nudge (workshop_id, revision_id);

-- How often a nudge was delivered by a clock that was ahead, and made to wait again when that came back.
ALTER TABLE nudge ADD COLUMN early_deliveries integer NOT NULL DEFAULT 0;
CREATE INDEX nudge_delivered_at_idx ON nudge (delivered_at);
