-- The newest of something, by name: what the next round starts from.
create table last_known (
  name  text primary key,
  at    integer not null,
  value text not null
) strict;
