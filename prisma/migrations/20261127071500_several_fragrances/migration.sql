-- A recipe had one fragrance, which needed no name; now it has a list, and each has a name among the materials.
CREATE FUNCTION pg_temp.recipe_of_today(recipe jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
    SELECT CASE WHEN jsonb_typeof(recipe -> 'fragrance') = 'object'
        THEN recipe - 'fragrance' || jsonb_build_object('fragrances', jsonb_build_array(
            '{"key": "fragrance", "title": "Fragrance", "behaviour": "mild"}'::jsonb || (recipe -> 'fragrance')))
        ELSE recipe - 'fragrance' END
$$;

-- The batch of a part as a plan tells it; what it was scented with stood beside it.
CREATE FUNCTION pg_temp.part_of_today(part jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
    SELECT CASE WHEN jsonb_typeof(part -> 'batch') = 'object' AND part -> 'batch' ? 'fragranceG'
        THEN part - 'fragrance' - 'fragranceKey' || jsonb_build_object('batch', (part -> 'batch') - 'fragranceG'
            || jsonb_build_object('allergens', '[]'::jsonb, 'fragrances',
                CASE WHEN (part #>> '{batch,fragranceG}')::numeric > 0
                    THEN jsonb_build_array(jsonb_build_object(
                        'key', coalesce(part ->> 'fragranceKey', 'fragrance'),
                        'title', coalesce(part ->> 'fragrance', 'Fragrance'),
                        'massG', part #> '{batch,fragranceG}', 'hasAllergens', false))
                    ELSE '[]'::jsonb END))
        ELSE part - 'fragrance' - 'fragranceKey' END
$$;

-- Risks of a single fragrance named none.
CREATE FUNCTION pg_temp.risks_of_today(risks jsonb, title text) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
    SELECT coalesce(jsonb_agg(CASE
        WHEN risk ->> 'code' IN ('fragrance.limit-unknown', 'fragrance.over-limit', 'fragrance.seizes')
            THEN jsonb_build_object('fragrance', title) || risk
        ELSE risk END ORDER BY place), '[]')
    FROM jsonb_array_elements(coalesce(risks, '[]')) WITH ORDINALITY AS each (risk, place)
$$;

CREATE FUNCTION pg_temp.document_of_today(document jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
    SELECT CASE WHEN jsonb_typeof(document -> 'runs') = 'array' THEN document || jsonb_build_object('runs', (
        SELECT coalesce(jsonb_agg(CASE WHEN jsonb_typeof(run -> 'amounts') = 'array'
            THEN run || jsonb_build_object('amounts', (
                SELECT coalesce(jsonb_agg(CASE WHEN part ? 'risks'
                    THEN pg_temp.part_of_today(part) || jsonb_build_object('risks',
                        pg_temp.risks_of_today(part -> 'risks', coalesce(part ->> 'fragrance', 'Fragrance')))
                    ELSE pg_temp.part_of_today(part) END ORDER BY place), '[]')
                FROM jsonb_array_elements(run -> 'amounts') WITH ORDINALITY AS each (part, place)))
            ELSE run END ORDER BY place), '[]')
        FROM jsonb_array_elements(document -> 'runs') WITH ORDINALITY AS each (run, place)))
        ELSE document END
$$;

UPDATE recipe SET content = pg_temp.recipe_of_today(content) WHERE content ? 'fragrance';

UPDATE run SET snapshot = jsonb_set(snapshot, '{recipes}', (
    SELECT coalesce(jsonb_agg(pg_temp.recipe_of_today(recipe) ORDER BY place), '[]')
    FROM jsonb_array_elements(snapshot -> 'recipes') WITH ORDINALITY AS each (recipe, place)))
WHERE jsonb_path_exists(snapshot, '$.recipes[*].fragrance');

-- What plans say stays, only how it is held is another.
ALTER TABLE plan_revision DISABLE TRIGGER plan_revision_immutable;
UPDATE plan_revision SET document = pg_temp.document_of_today(document)
WHERE jsonb_path_exists(document, '$.runs[*].amounts[*].batch');
ALTER TABLE plan_revision ENABLE TRIGGER plan_revision_immutable;

-- Answers that are kept for a request that comes twice.
UPDATE idempotency_key
SET response = jsonb_set(response, '{plan,document}', pg_temp.document_of_today(response #> '{plan,document}'))
WHERE jsonb_typeof(response #> '{plan,document}') = 'object';
UPDATE idempotency_key SET response = jsonb_set(response, '{document}', pg_temp.document_of_today(response -> 'document'))
WHERE jsonb_typeof(response -> 'document') = 'object';
