-- What was measured, bought, used and said beside the stages of fields: soil tests, seed tags,
-- stock, what went on the ground, settings tried, box checks, sprays, harvests, notes. Corrections
-- are entries of their own. A line that came with a line of the journal goes where that one goes.
create table ledger (
  id          integer primary key autoincrement,
  kind        text not null,
  field       text references field (name),
  at          integer not null,
  recorded_at integer not null,
  said_by     text not null,
  journal     integer references journal (id),
  undoes      integer unique references ledger (id),
  entry       text not null
) strict;
create index ledger_by_kind on ledger (kind, id);

create trigger ledger_is_never_rewritten before update on ledger
begin select raise(abort, 'the ledger is never rewritten'); end;
create trigger ledger_is_never_shortened before delete on ledger
begin select raise(abort, 'the ledger is never shortened'); end;

-- A field that goes by another name now; what was written under the old one stays as it was said.
alter table field add column called text references field (name);
