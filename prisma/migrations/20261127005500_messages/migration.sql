-- Plans, their causes and kept answers held sentences of one language. From now on they hold what a sentence needs, and the
-- sentence is made where it is read. Sentences of older plans go; numbers, times and titles stay. What an older plan cannot
-- say in data any more, its next plan says again.

-- [{"code": …}] for the state of a stage, or nothing: why it lay where it did is not known any more.
CREATE FUNCTION pg_temp.stage_why(status text) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
    SELECT CASE WHEN status IN ('done', 'spoilt')
        THEN jsonb_build_array(jsonb_build_object('code', 'why.' || status)) ELSE '[]'::jsonb END
$$;

-- A list with each of its items changed; null stays null.
CREATE FUNCTION pg_temp.cautions_of_today(cautions jsonb, ready_by text) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
    SELECT coalesce(jsonb_agg(CASE
        WHEN caution ->> 'code' = 'missed-day' THEN jsonb_build_object('code', 'caution.missed-day', 'readyBy', ready_by)
        WHEN caution ->> 'code' LIKE 'caution.%' THEN caution - 'text'
        ELSE jsonb_build_object('code', 'caution.' || (caution ->> 'code')) END ORDER BY place)
        FILTER (WHERE caution ->> 'code' <> 'missed-day' OR ready_by IS NOT NULL), '[]')
    FROM jsonb_array_elements(coalesce(cautions, '[]')) WITH ORDINALITY AS each (caution, place)
$$;

CREATE FUNCTION pg_temp.amounts_of_today(amounts jsonb, ready_by text) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
    SELECT coalesce(jsonb_agg(part
        || jsonb_build_object('risks', '[]'::jsonb,
            'cautions', pg_temp.cautions_of_today(part -> 'cautions', ready_by),
            'cover', (part -> 'cover') || '{"leftoverUses": []}')
        || CASE WHEN part ? 'perPiece' THEN jsonb_build_object('perPiece', (part -> 'perPiece') - 'learned'
            || jsonb_build_object('from', jsonb_build_object('code', 'use.written', 'ml', part #> '{perPiece,meanMl}')))
            ELSE '{}' END
        ORDER BY place), '[]')
    FROM jsonb_array_elements(coalesce(amounts, '[]')) WITH ORDINALITY AS each (part, place)
$$;

CREATE FUNCTION pg_temp.clocks_of_today(clocks jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
    SELECT coalesce(jsonb_agg(clock - 'title' - 'from' || '{"reasons": [], "beyond": []}' ORDER BY place), '[]')
    FROM jsonb_array_elements(coalesce(clocks, '[]')) WITH ORDINALITY AS each (clock, place)
$$;

CREATE FUNCTION pg_temp.stages_of_today(stages jsonb, ready_by text) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
    SELECT coalesce(jsonb_agg(stage || jsonb_build_object('why', pg_temp.stage_why(stage ->> 'status'),
        'cautions', pg_temp.cautions_of_today(stage -> 'cautions', ready_by)) ORDER BY place), '[]')
    FROM jsonb_array_elements(coalesce(stages, '[]')) WITH ORDINALITY AS each (stage, place)
$$;

-- Amounts and clocks of the first version had another shape; they were not shown any more.
CREATE FUNCTION pg_temp.runs_of_today(runs jsonb, is_first boolean, ready_by text) RETURNS jsonb
LANGUAGE sql IMMUTABLE AS $$
    SELECT coalesce(jsonb_agg(run
        || CASE WHEN is_first THEN '{"amounts": [], "clocks": [], "filling": []}'::jsonb ELSE jsonb_build_object(
            'amounts', pg_temp.amounts_of_today(run -> 'amounts', ready_by),
            'clocks', pg_temp.clocks_of_today(run -> 'clocks')) END
        || jsonb_build_object('stages', pg_temp.stages_of_today(run -> 'stages', ready_by),
            'cautions', pg_temp.cautions_of_today(run -> 'cautions', ready_by))
        ORDER BY place), '[]')
    FROM jsonb_array_elements(coalesce(runs, '[]')) WITH ORDINALITY AS each (run, place)
$$;

-- What was lost stays with its share. Of why, only a day that may be missed can still be told.
CREATE FUNCTION pg_temp.weak_links_of_today(document jsonb, ready_by text) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
    SELECT coalesce(jsonb_agg(link || jsonb_build_object('why', jsonb_build_object(
        'code', CASE WHEN link ->> 'stage' = 'ready' AND ready_by IS NOT NULL THEN 'loss.ready-by' ELSE 'loss.other' END,
        'stage', jsonb_build_object('run', link -> 'run', 'attempt', link -> 'attempt',
            'stage', CASE WHEN link ->> 'stage' = 'ready' THEN 'null'::jsonb ELSE link -> 'stage' END,
            'title', coalesce(
                (SELECT stage -> 'title' FROM jsonb_path_query(document, '$.runs[*]') AS run,
                    jsonb_path_query(run, '$.stages[*]') AS stage
                 WHERE run -> 'run' = link -> 'run' AND stage -> 'key' = link -> 'stage' LIMIT 1),
                (SELECT run -> 'title' FROM jsonb_path_query(document, '$.runs[*]') AS run
                 WHERE run -> 'run' = link -> 'run' LIMIT 1),
                link -> 'stage')))
        || CASE WHEN link ->> 'stage' = 'ready' AND ready_by IS NOT NULL
            THEN jsonb_build_object('day', ready_by) ELSE '{}' END) ORDER BY place), '[]')
    FROM jsonb_array_elements(coalesce(document -> 'weakLinks', '[]')) WITH ORDINALITY AS each (link, place)
$$;

CREATE FUNCTION pg_temp.document_of_today(document jsonb, ready_by text) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
    SELECT CASE WHEN document ->> 'schema' IN ('benchtide.plan/1', 'benchtide.plan/2') THEN
        document - 'clash' || jsonb_build_object(
            'schema', 'benchtide.plan/3',
            'runs', pg_temp.runs_of_today(document -> 'runs', document ->> 'schema' = 'benchtide.plan/1', ready_by),
            'weakLinks', pg_temp.weak_links_of_today(document, ready_by),
            'conflict', '[]'::jsonb,
            -- A plan from before there were guarantees has none.
            'guarantee', CASE WHEN jsonb_typeof(document -> 'guarantee') = 'object'
                THEN (document -> 'guarantee') || '{"reasons": []}' ELSE 'null' END)
        ELSE document END
$$;

CREATE FUNCTION pg_temp.changes_of_today(changes jsonb, status text) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
    SELECT coalesce(jsonb_agg(CASE WHEN jsonb_typeof(change -> 'why') = 'array' THEN change
        ELSE change || jsonb_build_object('why', CASE
            WHEN change ->> 'change' <> 'removed' THEN pg_temp.stage_why(change ->> 'change')
            WHEN status = 'planned' THEN '[{"code": "why.left-out"}]'
            ELSE '[{"code": "why.no-plan"}]' END) END ORDER BY place), '[]')
    FROM jsonb_array_elements(coalesce(changes, '[]')) WITH ORDINALITY AS each (change, place)
$$;

-- `log: pour-deep done` and the like.
CREATE FUNCTION pg_temp.cause_of_today(cause text, entry uuid) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
    SELECT CASE
        WHEN cause = 'first plan' THEN '{"code": "cause.first-plan"}'::jsonb
        WHEN cause LIKE 'change: %' THEN jsonb_build_object('code', 'cause.change', 'change', substr(cause, 9))
        WHEN cause LIKE 'log: %' THEN jsonb_build_object('code', 'cause.logged', 'entry', entry, 'what', NULL)
        ELSE '{"code": "cause.asked"}' END
$$;

-- A plan as it was answered with.
CREATE FUNCTION pg_temp.view_of_today(plan jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
    SELECT plan || jsonb_build_object(
        'document', pg_temp.document_of_today(plan -> 'document', NULL),
        'changes', pg_temp.changes_of_today(plan -> 'changes', plan ->> 'status'))
        || CASE WHEN jsonb_typeof(plan -> 'cause') = 'string'
            THEN jsonb_build_object('cause', pg_temp.cause_of_today(plan ->> 'cause', NULL)) ELSE '{}' END
$$;

-- The one change that plans must suffer: what they say stays, only how it is held is another.
ALTER TABLE plan_revision DISABLE TRIGGER plan_revision_immutable;

ALTER TABLE plan_revision ADD COLUMN told_cause jsonb;

-- The plan that an entry made was made at most a moment before the entry was written down, and entries take turns.
UPDATE plan_revision plan SET
    document = pg_temp.document_of_today(plan.document, run.order_ ->> 'readyBy'),
    changes = pg_temp.changes_of_today(plan.changes, plan.status),
    told_cause = pg_temp.cause_of_today(plan.cause, (
        SELECT entry.id FROM bench_log entry
        WHERE entry.workshop_id = plan.workshop_id AND entry.run_id = plan.run_id AND entry.logged_at >= plan.made_at
        ORDER BY entry.logged_at, entry.sequence LIMIT 1))
FROM run WHERE run.workshop_id = plan.workshop_id AND run.id = plan.run_id;

ALTER TABLE plan_revision DROP COLUMN cause;
ALTER TABLE plan_revision RENAME COLUMN told_cause TO cause;
ALTER TABLE plan_revision ALTER COLUMN cause SET NOT NULL;
ALTER TABLE plan_revision ENABLE TRIGGER plan_revision_immutable;

-- Answers that are kept for a request that comes twice: without them the request would be carried out again.
UPDATE idempotency_key SET response = response || '{"why": []}' WHERE jsonb_typeof(response -> 'why') = 'string';
UPDATE idempotency_key SET response = response || jsonb_build_object('plan', pg_temp.view_of_today(response -> 'plan'))
    WHERE jsonb_typeof(response #> '{plan,document}') = 'object';
UPDATE idempotency_key SET response = pg_temp.view_of_today(response)
    WHERE jsonb_typeof(response -> 'document') = 'object' AND response ? 'changes';
