-- How far long work has come: figures alone. A row stands for a job, and goes when its player is erased.

CREATE TABLE leeway.progress (
  job uuid PRIMARY KEY,
  owner uuid NOT NULL,
  done integer NOT NULL CHECK (done >= 0),
  total integer NOT NULL CHECK (total >= done)
);
CREATE INDEX progress_of_owner ON leeway.progress (owner);
