-- When a key was last used, to some minutes: so that a device that is gone for good is known in the list of devices.
ALTER TABLE access_key ADD COLUMN last_seen_at timestamptz(3);
