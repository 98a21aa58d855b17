-- Records are appended and superseded, never changed. What a player is and did is sealed with the player's key; in clear stand ids made at
-- random, kinds and versions, so that no byte of the database, its journal or a dump says who somebody is.

CREATE SCHEMA leeway;

CREATE TABLE leeway.store (
  only_row boolean PRIMARY KEY DEFAULT true CHECK (only_row),
  id uuid NOT NULL
);

-- One count of everything that happens to the records, in the order in which it was committed. Clocks order nothing.
CREATE SEQUENCE leeway.change;

CREATE TABLE leeway.record (
  owner uuid NOT NULL,
  id uuid NOT NULL,
  seq bigint NOT NULL UNIQUE DEFAULT nextval('leeway.change'),
  kind text NOT NULL,
  version integer NOT NULL CHECK (version > 0),
  supersedes uuid,
  digest bytea NOT NULL,
  sealed bytea NOT NULL,
  received timestamptz NOT NULL DEFAULT now(),
  PRIMARY KEY (owner, id)
);
CREATE INDEX record_of_kind ON leeway.record (owner, kind, seq);
CREATE INDEX record_superseding ON leeway.record (owner, supersedes) WHERE supersedes IS NOT NULL;
CREATE INDEX record_profiles ON leeway.record (seq) WHERE kind = 'profile';

CREATE FUNCTION leeway.refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'records are appended, never changed';
END $$;
CREATE TRIGGER record_is_appended BEFORE UPDATE ON leeway.record FOR EACH ROW EXECUTE FUNCTION leeway.refuse_change();

-- Owners that were erased. Nothing of theirs is taken in again.
CREATE TABLE leeway.tombstone (
  owner uuid PRIMARY KEY,
  seq bigint NOT NULL UNIQUE DEFAULT nextval('leeway.change'),
  erased timestamptz NOT NULL DEFAULT now()
);

-- Files with copies of the keys, made with backups: an erasure has to reach them.
CREATE TABLE leeway.key_copy (
  path text PRIMARY KEY
);
