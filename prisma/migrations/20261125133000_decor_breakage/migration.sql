-- Decor used to carry the spread of a poured amount, which meant nothing for things that are counted. What counts
-- there is how many break: 4 %, as for a new part, until the maker says otherwise.
CREATE FUNCTION decor_with_breakage(parts jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
  SELECT jsonb_agg(
    CASE WHEN part ->> 'kind' = 'decor'
      THEN part - 'spreadPercent' || '{"breakagePercent": 4}'::jsonb
      ELSE part
    END ORDER BY place)
  FROM jsonb_array_elements(parts) WITH ORDINALITY AS listed (part, place)
$$;

UPDATE piece_design SET content = jsonb_set(content, '{parts}', decor_with_breakage(content -> 'parts'));
UPDATE run SET snapshot = jsonb_set(snapshot, '{design,parts}', decor_with_breakage(snapshot -> 'design' -> 'parts'));

-- A spread of nothing used to be allowed; the least is a tenth of a per cent now.
UPDATE piece_design
SET content = regexp_replace(content::text, '"spreadPercent": 0([,}])', '"spreadPercent": 0.1\1', 'g')::jsonb;
UPDATE run
SET snapshot = regexp_replace(snapshot::text, '"spreadPercent": 0([,}])', '"spreadPercent": 0.1\1', 'g')::jsonb;

DROP FUNCTION decor_with_breakage(jsonb);
