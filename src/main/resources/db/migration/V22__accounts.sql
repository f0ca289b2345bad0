-- Who may get in where the service is reached from other machines.

create table account (
    id            bigint generated always as identity primary key,
    name          text        not null check (name <> ''),
    role          text        not null check (role in ('owner', 'builder')),
    active        boolean     not null default true,
    -- As the encoder prints it; none until the person has chosen one.
    password_hash text,
    created_at    timestamptz not null
);
create unique index account_name on account (lower(name));
comment on table account is 'A person who may log in. Kept for good, so that what was done keeps its name.';

create table account_link (
    secret_hash text primary key check (secret_hash <> ''),
    -- None: the link that makes the first owner.
    account_id  bigint unique references account on delete cascade,
    expires_at  timestamptz not null
);
comment on table account_link is 'A link by which a password is chosen, once; of its secret only the hash.';

-- Lost in a crash, which does no harm, and left out of backups.
create unlogged table log_in_attempt (
    who           text primary key,
    attempts      integer     not null check (attempts >= 0),
    blocked_until timestamptz not null,
    last_at       timestamptz not null
);
comment on table log_in_attempt is 'Failed attempts to log in, by account and by address, for all instances.';
