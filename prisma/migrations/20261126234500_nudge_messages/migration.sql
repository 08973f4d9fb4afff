-- A nudge holds what its sentence needs, and the sentence is made where it is read: in the reader's language, units and
-- time zone, and as of the moment at which it is said.
ALTER TABLE nudge
    ADD COLUMN title text,
    -- When the stage begins by the plan. NULL: an older nudge whose plan does not have the stage.
    ADD COLUMN start_at timestamptz(3),
    -- NULL: nothing closes the window, or it is not known either.
    ADD COLUMN last_call_at timestamptz(3);

-- What older nudges said stands in the plan that they came from.
UPDATE nudge SET
    title = stage ->> 'title',
    start_at = (stage ->> 'startAt')::timestamptz,
    last_call_at = (stage ->> 'lastCallAt')::timestamptz
FROM run, plan_revision plan,
    jsonb_path_query(plan.document, '$.runs[*]') AS planned,
    jsonb_path_query(planned, '$.stages[*]') AS stage
WHERE run.workshop_id = nudge.workshop_id AND run.id = nudge.run_id
    AND plan.workshop_id = nudge.workshop_id AND plan.id = nudge.revision_id
    AND planned ->> 'run' = run.key
    AND stage ->> 'key' = nudge.stage_key AND (stage ->> 'attempt')::integer = nudge.attempt;

-- Else the design that the run was made from knows the stage's title.
UPDATE nudge SET title = coalesce(
    (SELECT stage ->> 'title' FROM jsonb_path_query(run.snapshot, '$.design.stages[*]') AS stage
     WHERE stage ->> 'key' = nudge.stage_key LIMIT 1),
    nudge.stage_key)
FROM run
WHERE nudge.title IS NULL AND run.workshop_id = nudge.workshop_id AND run.id = nudge.run_id;

ALTER TABLE nudge ALTER COLUMN title SET NOT NULL;
ALTER TABLE nudge DROP COLUMN text;
