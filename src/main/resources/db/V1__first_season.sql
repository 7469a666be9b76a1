-- Everything that must outlive the process. Instants are milliseconds since 1970-01-01 UTC, days
-- are ISO dates in the farm's zone, quantities carry their SI unit in the name.

create table property (
  name          text primary key,
  latitude_deg  real not null,
  longitude_deg real not null,
  gate_stated   integer not null check (gate_stated in (0, 1))
) strict;

create table field (
  name               text primary key,
  property           text not null references property (name),
  listed             integer not null unique,
  latitude_deg       real not null,
  longitude_deg      real not null,
  area_ha            real not null check (area_ha > 0),
  sand_fraction      real not null,
  clay_fraction      real not null,
  organic_matter_pct real not null,
  slope_fraction     real not null,
  mixes              text not null,
  recipe             text not null,
  priority           real not null check (priority > 0),
  boundary           text,
  imported_at        integer not null
) strict;

-- What happened to a field, in the order it was said. Corrections are entries of their own.
create table journal (
  id          integer primary key autoincrement,
  field       text not null references field (name),
  kind        text not null,
  stage       text,
  operation   text,
  at          integer not null,
  recorded_at integer not null,
  said_by     text not null,
  machine     text,
  mix         text,
  held_until  integer,
  undoes      integer unique references journal (id),
  note        text
) strict;
create index journal_by_field on journal (field, id);

create trigger journal_is_never_rewritten before update on journal
begin select raise(abort, 'the journal is never rewritten'); end;
create trigger journal_is_never_shortened before delete on journal
begin select raise(abort, 'the journal is never shortened'); end;

-- What came up, counted in the field; the verdict itself is an entry of the journal.
create table stand_check (
  id                integer primary key autoincrement,
  journal           integer not null unique references journal (id),
  counted_fraction  real,
  chance_at_seeding real,
  cause             text
) strict;

-- Rain that was measured or analysed. A later value for the same hours replaces an earlier one when
-- read, not on disk.
create table rain (
  id          integer primary key autoincrement,
  property    text not null references property (name),
  source      text not null,
  from_at     integer not null,
  to_at       integer not null check (to_at > from_at),
  rain_mm     real not null check (rain_mm >= 0),
  recorded_at integer not null,
  said_by     text not null
) strict;
create index rain_by_property on rain (property, to_at);

-- Answers of forecast services as they came, gzipped, so that a past decision can be explained.
create table forecast_pull (
  id         integer primary key autoincrement,
  source     text not null,
  address    text not null,
  status     integer not null,
  fetched_at integer not null,
  issued_at  integer,
  headers    text not null,
  sha256     text not null,
  body_gzip  blob not null
) strict;
create index forecast_by_address on forecast_pull (address, fetched_at);
create index forecast_by_time on forecast_pull (fetched_at);

-- The last good answer to each question, for conditional requests after a restart.
create table last_good_copy (
  address      text primary key,
  headers      text not null,
  sha256       text not null,
  body_gzip    blob not null,
  fetched_at   integer not null,
  confirmed_at integer not null
) strict;

-- Hosts that are left alone for a while.
create table host_pause (
  host     text primary key,
  failures integer not null,
  since    integer not null,
  until_at integer not null,
  words    text not null
) strict;

create table plan_given (
  id       integer primary key autoincrement,
  as_of    integer not null,
  given_at integer not null,
  cause    text not null,
  plan     text not null
) strict;

create table window_event (
  id           integer primary key autoincrement,
  storm_window text not null,
  at           integer not null,
  kind         text not null,
  detail       text not null
) strict;
create index window_event_by_window on window_event (storm_window, id);

create table brief_sent (
  day         text primary key,
  as_of       integer not null,
  recorded_at integer not null,
  late        integer not null check (late in (0, 1)),
  detail      text not null
) strict;

create table soil_state (
  field text not null references field (name),
  at    integer not null,
  form  text not null,
  state blob not null,
  primary key (field, at)
) strict, without rowid;

-- Each effect of a job happens once for each slot it was due.
create table job_done (
  job     text not null,
  due_at  integer not null,
  done_at integer not null,
  note    text not null,
  primary key (job, due_at)
) strict, without rowid;

create table outbox (
  id           integer primary key autoincrement,
  event        text not null,
  recipient    text not null,
  channel      text not null check (channel in ('MAIL', 'WEBHOOK')),
  subject      text not null,
  content      blob not null,
  created_at   integer not null,
  send_from    integer not null,
  give_up_at   integer not null,
  state        text not null
               check (state in ('WAITING', 'SENT', 'REFUSED', 'GIVEN_UP', 'DROPPED')),
  tries        integer not null,
  next_try_at  integer,
  ended_at     integer,
  last_words   text not null,
  unique (event, recipient)
) strict;
create index outbox_by_state on outbox (state, next_try_at);
create index outbox_by_recipient on outbox (recipient, state, id);
