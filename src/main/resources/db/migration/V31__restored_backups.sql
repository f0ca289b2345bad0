-- A restore changes everything at once, without its rows being changes: it is told by itself.

create table restored_backup (
    id          bigint generated always as identity primary key,
    taken_at    timestamptz not null,
    restored_at timestamptz not null,
    former_data text        not null check (former_data <> '')
);
comment on table restored_backup is 'Each time that a backup was put in place of everything; never changed.';
create trigger keep_restored_backups before update or delete or truncate on restored_backup
    for each statement execute function keep_as_written();
call join_trail('restored_backup', 'restore', 'id', '{id}');
