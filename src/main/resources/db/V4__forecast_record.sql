-- What forecasts said of periods then ahead, one line for each property, period and class of lead
-- times: the last one said before half of the class's lead was over. The answers themselves stand
-- in forecast_pull.
create table said_chance (
  property  text not null,
  lead      text not null,
  from_at   integer not null,
  to_at     integer not null,
  source    text not null,
  issued_at integer not null,
  chance    real not null check (chance between 0 and 1),
  primary key (property, from_at, to_at, lead)
) strict, without rowid;

-- What past forecasts taught, and since when it was used; never rewritten, so that the chances of
-- an old plan can be worked out again.
create table lesson (
  id         integer primary key autoincrement,
  property   text not null,
  learned_at integer not null,
  lesson     text not null
) strict;
create index lesson_by_property on lesson (property, learned_at);

create trigger lesson_is_never_rewritten before update on lesson
begin select raise(abort, 'a lesson is never rewritten'); end;
create trigger lesson_is_never_shortened before delete on lesson
begin select raise(abort, 'a lesson is never shortened'); end;
