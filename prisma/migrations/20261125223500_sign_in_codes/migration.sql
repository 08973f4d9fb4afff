-- Short codes that let a browser in once. Only their hash is kept, so whoever reads the table can sign in with none.
CREATE TABLE sign_in_code (
    id uuid NOT NULL,
    workshop_id uuid NOT NULL REFERENCES workshop ON DELETE RESTRICT ON UPDATE RESTRICT,
    hash bytea NOT NULL UNIQUE CHECK (length(hash) = 32),
    created_at timestamptz(3) NOT NULL,
    expires_at timestamptz(3) NOT NULL,
    used_at timestamptz(3),
    PRIMARY KEY (workshop_id, id),
    CHECK (created_at < expires_at)
);
