-- Kinds of stages now bring waits of their own. A run that is at hand keeps the times it was planned with: its copy of the
-- design says that it takes the waits for firmness alone, as before. Designs of the library take all of them.
UPDATE run
SET snapshot = jsonb_set(snapshot, '{design,adds}', '"firmness"')
WHERE snapshot -> 'design' IS NOT NULL;

-- Time at the bench may be left open now, and is then what the kind of stage usually takes. A design whose stage had no time
-- at all never said so: the fields were filled with 0.
UPDATE piece_design
SET content = jsonb_set(content, '{stages}', (
    SELECT jsonb_agg(
        CASE WHEN coalesce((stage ->> 'setupMin')::numeric, 0) = 0 AND coalesce((stage ->> 'perPieceS')::numeric, 0) = 0
            THEN stage - 'setupMin' - 'perPieceS' ELSE stage END
        ORDER BY place)
    FROM jsonb_array_elements(content -> 'stages') WITH ORDINALITY AS each (stage, place)
))
WHERE jsonb_typeof(content -> 'stages') = 'array' AND jsonb_array_length(content -> 'stages') > 0;
