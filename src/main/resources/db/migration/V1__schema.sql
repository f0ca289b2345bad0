-- The catalog as imported: every import replaces parts, suppliers, offers and labour in one transaction, and the
-- stock when it brings one.

create table catalog_release (
    id          bigint generated always as identity primary key,
    version     text        not null check (version <> ''),
    imported_at timestamptz not null
);
comment on table catalog_release is
    'One row for each catalog import; the newest row is the catalog in force, and its version is a hash of the content.';

create table part (
    number     text primary key check (number <> ''),
    kind       text  not null check (kind <> ''),
    title      text  not null check (title <> ''),
    brand      text  not null,
    mass_g     double precision not null check (mass_g >= 0 and mass_g < 'Infinity'),
    attributes jsonb not null check (jsonb_typeof(attributes) = 'object')
);
comment on table part is
    'Everything a kit is made of. What only one kind of part has (positions, ratings, areas, ...) is in attributes.';

create table supplier (
    code text primary key check (code <> ''),
    name text not null check (name <> '')
);
comment on table supplier is 'Who sells parts to the shop.';

create table offer (
    id             bigint primary key,
    supplier_code  text    not null references supplier,
    part_number    text    not null references part,
    pack_size      integer not null check (pack_size > 0),
    currency       text    not null check (currency ~ '^[A-Z]{3}$'),
    lead_time_days integer not null check (lead_time_days >= 0),
    unique (supplier_code, part_number, currency, pack_size)
);
create index offer_part_number on offer (part_number);
comment on table offer is
    'One supplier''s terms for one part in one pack size and one currency (ISO 4217); id is its place in the import.';

create table offer_price (
    offer_id      bigint         not null references offer on delete cascade,
    from_quantity integer        not null check (from_quantity > 0),
    unit_price    numeric(14, 6) not null check (unit_price >= 0),
    primary key (offer_id, from_quantity)
);
comment on table offer_price is 'Price breaks: the price of one unit, valid from that many units upward.';

create table stock_entry (
    part_number text primary key references part,
    on_hand     numeric(14, 3) not null check (on_hand >= 0),
    minimum     numeric(14, 3) not null check (minimum >= 0)
);
comment on table stock_entry is 'What lies on the shelf, in pieces or metres, and the level below which it is ordered.';

create table labour_rate (
    code        text primary key check (code <> ''),
    title       text           not null check (title <> ''),
    minutes     numeric(8, 3)  not null check (minutes >= 0),
    hourly_rate numeric(14, 6) not null check (hourly_rate >= 0),
    currency    text           not null check (currency ~ '^[A-Z]{3}$')
);
comment on table labour_rate is 'How long one piece of bench work takes, and what an hour of it costs.';

-- Jobs outlive the catalog they were made with, so nothing here refers to it.

create table job (
    id             bigint generated always as identity primary key,
    reference      text        not null unique check (reference <> ''),
    title          text        not null,
    customer       text        not null,
    revision       integer     not null check (revision > 0),
    version        bigint      not null check (version >= 0),
    document       jsonb       not null check (jsonb_typeof(document) = 'object'),
    schema_version integer     not null check (schema_version > 0),
    created_at     timestamptz not null,
    changed_at     timestamptz not null,
    check (changed_at >= created_at)
);
comment on table job is
    'One customer''s machine in its newest revision; version counts changes and turns down stale ones.';

create table job_revision (
    job_id         bigint      not null references job on delete cascade,
    revision       integer     not null check (revision > 0),
    document       jsonb       not null check (jsonb_typeof(document) = 'object'),
    schema_version integer     not null check (schema_version > 0),
    changed_at     timestamptz not null,
    changed_by     text        not null,
    primary key (job_id, revision)
);
comment on table job_revision is 'Every revision a job ever had, never changed once written.';
