-- The newest of something, by name: what the next round starts from.
create table last_known (
  name  text primary key,
  at    integer not null,
  value text not null
) strict;

-- A message that somebody is handing over just now; freed when the service starts, because whoever
-- held it is dead then.
alter table outbox add column held integer not null default 0 check (held in (0, 1));
