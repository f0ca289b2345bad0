-- What the shop adds to a part's cost, what it asks for shipping, and which taxes there are. An import that brings
-- none of these files leaves them as they are.

create table mark_up (
    id         bigint primary key,
    -- A part's number or the code of a group of lines; both left out: everything else.
    part       text unique check (part <> ''),
    line_group text unique check (line_group <> ''),
    percent    numeric(7, 3) not null check (percent >= 0),
    check (part is null or line_group is null)
);
create unique index mark_up_usual on mark_up ((true)) where part is null and line_group is null;
comment on table mark_up is 'Percent on top of cost; a row for a part comes before one for its group.';

create table shipping_class (
    code      text           not null check (code <> ''),
    title     text           not null check (title <> ''),
    up_to_g   integer        not null check (up_to_g > 0),
    price     numeric(14, 6) not null check (price >= 0),
    currency  text           not null check (currency ~ '^[A-Z]{3}$'),
    primary key (code, currency),
    unique (currency, up_to_g)
);
comment on table shipping_class is 'What sending a parcel up to a weight costs the customer.';

create table tax_kind (
    code    text primary key check (code <> ''),
    title   text          not null check (title <> ''),
    percent numeric(6, 3) not null check (percent >= 0),
    note    text          not null
);
comment on table tax_kind is 'One kind of customer, the tax that it pays, and the sentence that goes on its papers.';

-- Quotes outlive the job and the catalog they were made of, so nothing here refers to those.

create table quote_count (
    year integer primary key check (year > 0),
    last integer not null check (last > 0)
);
comment on table quote_count is 'The last number given to a quote in a year.';

create table quote (
    id            bigint generated always as identity primary key,
    number        text        not null unique check (number <> ''),
    job_id        bigint      not null,
    job_reference text        not null,
    title         text        not null,
    customer      text        not null,
    revision      integer     not null check (revision > 0),
    version       bigint      not null check (version >= 0),
    fulfilled_at  timestamptz,
    created_at    timestamptz not null,
    changed_at    timestamptz not null,
    check (changed_at >= created_at)
);
comment on table quote is
    'One quote in its newest revision; version counts changes and turns down stale ones.';

create table quote_revision (
    quote_id    bigint  not null references quote on delete cascade,
    revision    integer not null check (revision > 0),
    state       text    not null check (state in ('draft', 'sent', 'accepted', 'declined')),
    quoted_on   date    not null,
    valid_until date    not null,
    -- What the draft asks for, and the quote worked out of it: text, because its bytes are kept, too.
    wishes      text    not null check (wishes is json object),
    document    text    not null check (document is json object),
    schema_version integer not null check (schema_version > 0),
    pdf_a4      bytea,
    pdf_letter  bytea,
    csv         bytea,
    sent_at     timestamptz,
    decided_at  timestamptz,
    variant     text,
    primary key (quote_id, revision),
    check (valid_until >= quoted_on),
    check ((state = 'draft') = (sent_at is null)),
    check ((state = 'draft') = (pdf_a4 is null)),
    check ((state = 'draft') = (pdf_letter is null)),
    check ((state = 'draft') = (csv is null)),
    check ((state in ('accepted', 'declined')) = (decided_at is not null)),
    check ((state = 'accepted') = (variant is not null))
);
create unique index quote_revision_draft on quote_revision (quote_id) where state = 'draft';
comment on table quote_revision is
    'Every revision of a quote. Once sent it is kept as it went out; only the answer to it is added.';

create function keep_sent_quotes() returns trigger language plpgsql as $$
begin
    if old.state = 'draft' then
        return case tg_op when 'DELETE' then old else new end;
    end if;
    if tg_op = 'UPDATE' and old.state = 'sent' and new.state in ('accepted', 'declined')
        and (new.quote_id, new.revision, new.quoted_on, new.valid_until, new.wishes, new.document,
             new.schema_version, new.pdf_a4, new.pdf_letter, new.csv, new.sent_at)
            is not distinct from
            (old.quote_id, old.revision, old.quoted_on, old.valid_until, old.wishes, old.document,
             old.schema_version, old.pdf_a4, old.pdf_letter, old.csv, old.sent_at)
    then
        return new;
    end if;
    raise exception 'revision % of quote % was sent and stays as it is', old.revision, old.quote_id
        using errcode = 'restrict_violation';
end
$$;
create trigger keep_sent_quotes before update or delete on quote_revision
    for each row execute function keep_sent_quotes();

create table quote_demand (
    quote_id    bigint         not null references quote on delete cascade,
    part_number text           not null check (part_number <> ''),
    quantity    numeric(14, 3) not null check (quantity > 0),
    primary key (quote_id, part_number)
);
comment on table quote_demand is
    'What accepted quotes still need, in pieces or metres; the rows of a quote go when its kits are delivered.';
