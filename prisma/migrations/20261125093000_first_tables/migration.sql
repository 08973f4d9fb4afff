-- Every key begins with workshop_id and every reference carries it, so that no row can point into another
-- workshop and the tables can later be split by workshop. References never cascade: nothing is deleted unseen.

CREATE TABLE workshop (
    id uuid PRIMARY KEY,
    version integer NOT NULL DEFAULT 1,
    facts jsonb NOT NULL,
    created_at timestamptz(3) NOT NULL,
    updated_at timestamptz(3) NOT NULL
);

CREATE TABLE access_key (
    id uuid NOT NULL,
    workshop_id uuid NOT NULL REFERENCES workshop ON DELETE RESTRICT ON UPDATE RESTRICT,
    label text NOT NULL,
    hash bytea NOT NULL UNIQUE CHECK (length(hash) = 32),
    created_at timestamptz(3) NOT NULL,
    revoked_at timestamptz(3),
    PRIMARY KEY (workshop_id, id)
);

CREATE TABLE mould (
    id uuid NOT NULL,
    workshop_id uuid NOT NULL REFERENCES workshop ON DELETE RESTRICT ON UPDATE RESTRICT,
    key text NOT NULL,
    version integer NOT NULL DEFAULT 1,
    content jsonb NOT NULL,
    created_at timestamptz(3) NOT NULL,
    updated_at timestamptz(3) NOT NULL,
    archived_at timestamptz(3),
    PRIMARY KEY (workshop_id, id),
    CHECK (content ->> 'key' = key)
);

CREATE TABLE fat (LIKE mould INCLUDING DEFAULTS INCLUDING CONSTRAINTS);
CREATE TABLE recipe (LIKE mould INCLUDING DEFAULTS INCLUDING CONSTRAINTS);
CREATE TABLE piece_design (LIKE mould INCLUDING DEFAULTS INCLUDING CONSTRAINTS);
ALTER TABLE fat
    ADD PRIMARY KEY (workshop_id, id),
    ADD FOREIGN KEY (workshop_id) REFERENCES workshop ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE recipe
    ADD PRIMARY KEY (workshop_id, id),
    ADD FOREIGN KEY (workshop_id) REFERENCES workshop ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE piece_design
    ADD PRIMARY KEY (workshop_id, id),
    ADD FOREIGN KEY (workshop_id) REFERENCES workshop ON DELETE RESTRICT ON UPDATE RESTRICT;

-- A key may be used again once its first bearer is archived.
CREATE UNIQUE INDEX mould_in_use ON mould (workshop_id, key) WHERE archived_at IS NULL;
CREATE UNIQUE INDEX fat_in_use ON fat (workshop_id, key) WHERE archived_at IS NULL;
CREATE UNIQUE INDEX recipe_in_use ON recipe (workshop_id, key) WHERE archived_at IS NULL;
CREATE UNIQUE INDEX piece_design_in_use ON piece_design (workshop_id, key) WHERE archived_at IS NULL;

CREATE TABLE run (
    id uuid NOT NULL,
    workshop_id uuid NOT NULL REFERENCES workshop ON DELETE RESTRICT ON UPDATE RESTRICT,
    key text NOT NULL,
    version integer NOT NULL DEFAULT 1,
    order_ jsonb NOT NULL,
    snapshot jsonb NOT NULL,
    state text NOT NULL CHECK (state IN ('planned', 'making', 'curing', 'abandoned')),
    created_at timestamptz(3) NOT NULL,
    updated_at timestamptz(3) NOT NULL,
    PRIMARY KEY (workshop_id, id),
    UNIQUE (workshop_id, key),
    CHECK (order_ ->> 'key' = key)
);

CREATE TABLE part (
    id uuid NOT NULL,
    workshop_id uuid NOT NULL,
    run_id uuid NOT NULL,
    key text NOT NULL,
    title text NOT NULL,
    kind text NOT NULL CHECK (kind IN ('batch', 'melt-and-pour', 'decor')),
    PRIMARY KEY (workshop_id, id),
    UNIQUE (workshop_id, run_id, key),
    FOREIGN KEY (workshop_id, run_id) REFERENCES run ON DELETE RESTRICT ON UPDATE RESTRICT
);

CREATE TABLE batch (
    id uuid NOT NULL,
    workshop_id uuid NOT NULL,
    part_id uuid NOT NULL,
    attempt integer NOT NULL CHECK (attempt >= 1),
    amounts jsonb NOT NULL,
    state text NOT NULL CHECK (state IN ('planned', 'poured', 'spoilt')),
    PRIMARY KEY (workshop_id, id),
    UNIQUE (workshop_id, part_id, attempt),
    FOREIGN KEY (workshop_id, part_id) REFERENCES part ON DELETE RESTRICT ON UPDATE RESTRICT
);

CREATE TABLE plan_revision (
    id uuid NOT NULL,
    workshop_id uuid NOT NULL,
    run_id uuid NOT NULL,
    number integer NOT NULL CHECK (number >= 1),
    made_at timestamptz(3) NOT NULL,
    cause text NOT NULL,
    status text NOT NULL CHECK (status IN ('planned', 'conflict', 'undecided')),
    document jsonb NOT NULL,
    changes jsonb NOT NULL,
    PRIMARY KEY (workshop_id, id),
    UNIQUE (workshop_id, run_id, number),
    FOREIGN KEY (workshop_id, run_id) REFERENCES run ON DELETE RESTRICT ON UPDATE RESTRICT
);

CREATE TABLE stage (
    id uuid NOT NULL,
    workshop_id uuid NOT NULL,
    revision_id uuid NOT NULL,
    run_id uuid NOT NULL,
    key text NOT NULL,
    attempt integer NOT NULL CHECK (attempt >= 1),
    title text NOT NULL,
    kind text NOT NULL,
    part_key text NOT NULL,
    status text NOT NULL CHECK (status IN ('planned', 'done', 'spoilt')),
    start_at timestamptz(3) NOT NULL,
    end_at timestamptz(3) NOT NULL,
    opens_at timestamptz(3) NOT NULL,
    best_at timestamptz(3) NOT NULL,
    last_call_at timestamptz(3),
    surely_open_at timestamptz(3),
    surely_until timestamptz(3),
    PRIMARY KEY (workshop_id, id),
    UNIQUE (workshop_id, revision_id, key, attempt),
    FOREIGN KEY (workshop_id, revision_id) REFERENCES plan_revision ON DELETE RESTRICT ON UPDATE RESTRICT,
    FOREIGN KEY (workshop_id, run_id) REFERENCES run ON DELETE RESTRICT ON UPDATE RESTRICT
);
CREATE INDEX stage_workshop_id_run_id_idx ON stage (workshop_id, run_id);

CREATE TABLE bench_log (
    id uuid NOT NULL,
    workshop_id uuid NOT NULL,
    run_id uuid NOT NULL,
    sequence bigint NOT NULL GENERATED BY DEFAULT AS IDENTITY,
    at timestamptz(3) NOT NULL,
    logged_at timestamptz(3) NOT NULL,
    entry jsonb NOT NULL,
    PRIMARY KEY (workshop_id, id),
    UNIQUE (workshop_id, run_id, sequence),
    FOREIGN KEY (workshop_id, run_id) REFERENCES run ON DELETE RESTRICT ON UPDATE RESTRICT
);

CREATE TABLE nudge (
    id uuid NOT NULL UNIQUE,
    workshop_id uuid NOT NULL,
    run_id uuid NOT NULL,
    revision_id uuid NOT NULL,
    stage_key text NOT NULL,
    attempt integer NOT NULL CHECK (attempt >= 1),
    kind text NOT NULL CHECK (kind IN ('window-opens', 'time-for-it', 'last-call')),
    text text NOT NULL,
    due_at timestamptz(3) NOT NULL,
    status text NOT NULL CHECK (status IN ('waiting', 'delivered', 'cancelled')),
    version integer NOT NULL DEFAULT 1,
    inbox_sequence bigint,
    delivered_at timestamptz(3),
    PRIMARY KEY (workshop_id, id),
    UNIQUE (workshop_id, inbox_sequence),
    CHECK ((status = 'delivered') = (inbox_sequence IS NOT NULL)),
    CHECK ((status = 'delivered') = (delivered_at IS NOT NULL)),
    FOREIGN KEY (workshop_id, run_id) REFERENCES run ON DELETE RESTRICT ON UPDATE RESTRICT,
    FOREIGN KEY (workshop_id, revision_id) REFERENCES plan_revision ON DELETE RESTRICT ON UPDATE RESTRICT
);
CREATE INDEX nudge_workshop_id_run_id_idx ON nudge (workshop_id, run_id);
CREATE INDEX nudge_status_due_at_idx ON nudge (status, due_at);
CREATE UNIQUE INDEX nudge_one_waiting ON nudge (workshop_id, run_id, stage_key, attempt, kind)
    WHERE status = 'waiting';
CREATE SEQUENCE nudge_inbox_sequence AS bigint;

CREATE TABLE lot (
    id uuid NOT NULL,
    workshop_id uuid NOT NULL,
    run_id uuid NOT NULL,
    title text NOT NULL,
    count integer NOT NULL CHECK (count >= 0),
    made_at timestamptz(3) NOT NULL,
    ready_low timestamptz(3) NOT NULL,
    ready_likely timestamptz(3) NOT NULL,
    ready_high timestamptz(3) NOT NULL,
    version integer NOT NULL DEFAULT 1,
    created_at timestamptz(3) NOT NULL,
    updated_at timestamptz(3) NOT NULL,
    PRIMARY KEY (workshop_id, id),
    UNIQUE (workshop_id, run_id),
    CHECK (ready_low <= ready_likely AND ready_likely <= ready_high),
    FOREIGN KEY (workshop_id, run_id) REFERENCES run ON DELETE RESTRICT ON UPDATE RESTRICT
);

CREATE TABLE idempotency_key (
    workshop_id uuid NOT NULL REFERENCES workshop ON DELETE RESTRICT ON UPDATE RESTRICT,
    key text NOT NULL,
    request_hash text NOT NULL,
    status integer,
    response jsonb,
    created_at timestamptz(3) NOT NULL,
    PRIMARY KEY (workshop_id, key)
);

-- What was logged or planned is history: mistakes are answered by a later row, never by a changed one.
CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION 'rows of % are never changed or removed: % refused', TG_TABLE_NAME, TG_OP
        USING ERRCODE = 'restrict_violation';
END
$$;
CREATE TRIGGER bench_log_append_only BEFORE UPDATE OR DELETE OR TRUNCATE ON bench_log
    FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
CREATE TRIGGER plan_revision_immutable BEFORE UPDATE OR DELETE OR TRUNCATE ON plan_revision
    FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();
