-- The demo is a workshop of its own beside that of the maker, who may throw it away, log and all. A workshop is begun once its
-- maker has chosen to; those that are there already were.
ALTER TABLE workshop
    ADD COLUMN demo_of uuid UNIQUE REFERENCES workshop ON DELETE RESTRICT ON UPDATE RESTRICT,
    ADD COLUMN begun boolean NOT NULL DEFAULT true;

CREATE FUNCTION is_demo(workshop uuid) RETURNS boolean LANGUAGE sql STABLE AS $$
    SELECT EXISTS (SELECT 1 FROM workshop WHERE id = $1 AND demo_of IS NOT NULL)
$$;

-- Still refused but to the clearing that says what it is, and then for each row that is not of a demo.
DROP TRIGGER bench_log_append_only ON bench_log;
CREATE TRIGGER bench_log_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON bench_log
    FOR EACH STATEMENT EXECUTE FUNCTION refuse_change_but_clearing();
DROP TRIGGER stock_entry_append_only ON stock_entry;
CREATE TRIGGER stock_entry_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON stock_entry
    FOR EACH STATEMENT EXECUTE FUNCTION refuse_change_but_clearing();

CREATE FUNCTION refuse_losing_log() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF is_demo(OLD.workshop_id) THEN
        RETURN OLD;
    END IF;
    RAISE EXCEPTION 'the log of a maker stays, and so does their stock: DELETE refused' USING ERRCODE = 'restrict_violation';
END
$$;
CREATE TRIGGER bench_log_stays BEFORE DELETE ON bench_log
    FOR EACH ROW EXECUTE FUNCTION refuse_losing_log();
CREATE TRIGGER stock_entry_stays BEFORE DELETE ON stock_entry
    FOR EACH ROW EXECUTE FUNCTION refuse_losing_log();

CREATE OR REPLACE FUNCTION refuse_losing_latest() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF is_demo(OLD.workshop_id) OR EXISTS (SELECT 1 FROM plan_revision
            WHERE workshop_id = OLD.workshop_id AND run_id = OLD.run_id AND number > OLD.number) THEN
        RETURN OLD;
    END IF;
    RAISE EXCEPTION 'the latest plan of a run stays: DELETE refused' USING ERRCODE = 'restrict_violation';
END
$$;

DROP FUNCTION refuse_change();
