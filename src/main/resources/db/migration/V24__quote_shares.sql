-- No reference to the quote: only sent revisions are shared, and those are never deleted.

create table quote_share (
    id          bigint generated always as identity primary key,
    quote_id    bigint      not null,
    revision    integer     not null check (revision > 0),
    secret_hash text        not null unique check (secret_hash <> ''),
    created_at  timestamptz not null,
    expires_at  timestamptz not null,
    revoked_at  timestamptz,
    check (expires_at > created_at)
);
create index quote_share_quote on quote_share (quote_id);
comment on table quote_share is 'A link by which a customer reads one sent quote; of its secret only the hash.';
