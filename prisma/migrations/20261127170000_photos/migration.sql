-- Photos for the bench log, each of one run. A note of the log says which it shows; a photo that no note shows any more is
-- cleared after a while.
CREATE TABLE photo (
    -- Given by the device that took it, so that it is kept once however often it is sent.
    id uuid NOT NULL,
    workshop_id uuid NOT NULL,
    run_id uuid NOT NULL,
    kept_at timestamptz(3) NOT NULL,
    width integer NOT NULL,
    height integer NOT NULL,
    size integer NOT NULL,
    -- A JPEG, which does not get smaller by compressing it again.
    bytes bytea STORAGE EXTERNAL NOT NULL CHECK (octet_length(bytes) = size),
    PRIMARY KEY (workshop_id, id),
    FOREIGN KEY (workshop_id, run_id) REFERENCES run ON DELETE RESTRICT ON UPDATE RESTRICT
);
CREATE INDEX photo_workshop_id_run_id_idx ON photo (workshop_id, run_id);
