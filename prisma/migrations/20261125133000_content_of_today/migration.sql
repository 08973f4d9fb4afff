-- What the first version stored, brought within what is accepted now.
--
-- Decor used to carry the spread of a poured amount, which meant nothing for things that are counted. What counts
-- there is how many break: 4 %, as for a new part, until the maker says otherwise. Amounts and spreads have a least
-- value now; nothing was ever meant to be smaller.
CREATE FUNCTION at_least(content jsonb, field text, smallest numeric) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
  SELECT CASE WHEN (content ->> field)::numeric < smallest
    THEN jsonb_set(content, ARRAY[field], to_jsonb(smallest))
    ELSE content
  END
$$;

CREATE FUNCTION part_of_today(part jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
  SELECT CASE WHEN part ->> 'kind' = 'decor'
    THEN at_least(part - 'spreadPercent' || '{"breakagePercent": 4}'::jsonb, 'eachG', 0.01)
    ELSE at_least(at_least(part, 'spreadPercent', 0.1), 'perPieceMl', 0.01)
  END
$$;

-- A fat that is in use was looked at already; only new ones are questioned. Without a profile it can only be a wax.
CREATE FUNCTION fat_of_today(fat jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
  SELECT fat || '{"confirmed": true}'::jsonb
    || CASE WHEN fat -> 'fattyAcidsPercent' = '{}'::jsonb THEN '{"kind": "wax"}'::jsonb ELSE '{}'::jsonb END
$$;

CREATE FUNCTION parts_of_today(parts jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
  SELECT COALESCE(jsonb_agg(part_of_today(part) ORDER BY place), '[]'::jsonb)
  FROM jsonb_array_elements(parts) WITH ORDINALITY AS listed (part, place)
$$;

CREATE FUNCTION moulds_of_today(moulds jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
  SELECT COALESCE(jsonb_agg(at_least(mould, 'cavityMl', 0.1) ORDER BY place), '[]'::jsonb)
  FROM jsonb_array_elements(moulds) WITH ORDINALITY AS listed (mould, place)
$$;

CREATE FUNCTION fats_of_today(fats jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE AS $$
  SELECT COALESCE(jsonb_agg(fat_of_today(fat) ORDER BY place), '[]'::jsonb)
  FROM jsonb_array_elements(fats) WITH ORDINALITY AS listed (fat, place)
$$;

UPDATE piece_design SET content = jsonb_set(content, '{parts}', parts_of_today(content -> 'parts'));
UPDATE mould SET content = at_least(content, 'cavityMl', 0.1);
UPDATE fat SET content = fat_of_today(content);
UPDATE run SET snapshot = snapshot || jsonb_build_object(
  'design', jsonb_set(snapshot -> 'design', '{parts}', parts_of_today(snapshot -> 'design' -> 'parts')),
  'moulds', moulds_of_today(snapshot -> 'moulds'),
  'fats', fats_of_today(snapshot -> 'fats')
);

DROP FUNCTION fats_of_today(jsonb);
DROP FUNCTION moulds_of_today(jsonb);
DROP FUNCTION parts_of_today(jsonb);
DROP FUNCTION fat_of_today(jsonb);
DROP FUNCTION part_of_today(jsonb);
DROP FUNCTION at_least(jsonb, text, numeric);
