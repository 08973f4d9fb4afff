-- A plan tells three odds: of sound pieces at all, of sound pieces by the day, and of all that is nice to have besides.
-- Plans from before told one, in which everything counted alike. It stands for all three, as the least that the first two
-- can have been; what was lost at the lot was its day, all else counted as pieces.

CREATE FUNCTION pg_temp.with_three_odds(document jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
    SELECT CASE WHEN document ->> 'schema' = 'benchtide.plan/3' THEN
        document || jsonb_build_object(
            'schema', 'benchtide.plan/4',
            'odds', CASE WHEN jsonb_typeof(document -> 'odds') = 'object'
                THEN (document -> 'odds') - 'probability' || jsonb_build_object(
                    'soundAtAll', document #> '{odds,probability}',
                    'soundByTheDay', document #> '{odds,probability}',
                    'asPlanned', document #> '{odds,probability}')
                ELSE 'null' END,
            'weakLinks', (
                SELECT coalesce(jsonb_agg(link || jsonb_build_object(
                    'loses', CASE WHEN link ->> 'stage' = 'ready' THEN 'day' ELSE 'pieces' END) ORDER BY place), '[]')
                FROM jsonb_array_elements(coalesce(document -> 'weakLinks', '[]'))
                    WITH ORDINALITY AS each (link, place)))
        ELSE document END
$$;

-- What plans say stays, only how it is held is another.
ALTER TABLE plan_revision DISABLE TRIGGER plan_revision_immutable;
UPDATE plan_revision SET document = pg_temp.with_three_odds(document)
WHERE document ->> 'schema' = 'benchtide.plan/3';
ALTER TABLE plan_revision ENABLE TRIGGER plan_revision_immutable;

-- Answers that are kept for a request that comes twice.
UPDATE idempotency_key
SET response = jsonb_set(response, '{plan,document}', pg_temp.with_three_odds(response #> '{plan,document}'))
WHERE jsonb_typeof(response #> '{plan,document}') = 'object';
UPDATE idempotency_key SET response = jsonb_set(response, '{document}', pg_temp.with_three_odds(response -> 'document'))
WHERE jsonb_typeof(response -> 'document') = 'object';
