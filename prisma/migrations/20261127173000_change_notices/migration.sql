-- Tells whoever listens, at the commit, what changed: pages that are open on other devices follow by that, whichever process
-- wrote it. The same notice is sent once in a transaction. The workshop, then the run or the word stock, then what is new of it.
CREATE FUNCTION tell_change() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    told jsonb := jsonb_build_object('workshopId', NEW.workshop_id);
BEGIN
    CASE TG_TABLE_NAME
        WHEN 'plan_revision' THEN told := told || jsonb_build_object('changed', NEW.run_id, 'plan', NEW.number);
        WHEN 'bench_log' THEN told := told || jsonb_build_object('changed', NEW.run_id, 'entry', NEW.id);
        WHEN 'run' THEN told := told || jsonb_build_object('changed', NEW.id);
        ELSE told := told || jsonb_build_object('changed', 'stock');
    END CASE;
    PERFORM pg_notify('benchtide_inbox', told::text);
    RETURN NULL;
END
$$;
CREATE TRIGGER plan_revision_told AFTER INSERT ON plan_revision FOR EACH ROW EXECUTE FUNCTION tell_change();
CREATE TRIGGER bench_log_told AFTER INSERT ON bench_log FOR EACH ROW EXECUTE FUNCTION tell_change();
CREATE TRIGGER stock_entry_told AFTER INSERT ON stock_entry FOR EACH ROW EXECUTE FUNCTION tell_change();
CREATE TRIGGER run_told AFTER INSERT OR UPDATE ON run FOR EACH ROW EXECUTE FUNCTION tell_change();
