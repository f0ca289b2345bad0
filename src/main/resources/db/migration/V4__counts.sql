-- Counts of bags. Everything that a count needs of its job and of the catalog is kept with it, so nothing here refers
-- to those. What was found is only ever added: its sum is the count, so that nothing is lost when two people tap at once.

create table bag_count (
    id              bigint generated always as identity primary key,
    job_id          bigint           not null,
    reference       text             not null check (reference <> ''),
    title           text             not null,
    customer        text             not null,
    revision        integer          not null check (revision > 0),
    fingerprint     text             not null check (fingerprint <> ''),
    catalog_version text             not null,
    supply_v        double precision not null check (supply_v > 0),
    sets            text             not null check (sets in ('CLOSED', 'OPENED')),
    started_by      text             not null check (started_by <> ''),
    started_at      timestamptz      not null,
    signed_by       text check (signed_by <> ''),
    signed_at       timestamptz check (signed_at >= started_at),
    remark          text             not null default '',
    record_a4       bytea,
    record_letter   bytea,
    check ((signed_by is null) = (signed_at is null)),
    check ((signed_by is null) = (record_a4 is null)),
    check ((signed_by is null) = (record_letter is null))
);
comment on table bag_count is
    'One checking of a real bag against one revision of a job; once signed it never changes, nor do its papers.';

create table count_line (
    count_id       bigint           not null references bag_count on delete cascade,
    position       integer          not null check (position >= 0),
    part_number    text             not null check (part_number <> ''),
    title          text             not null,
    kind           text             not null,
    colour         text             not null,
    mark           text             not null,
    quantity       numeric(14, 3)   not null check (quantity > 0),
    unit           text             not null check (unit in ('each', 'leads', 'm')),
    places         text[]           not null,
    cuts_mm        bigint[]         not null,
    mass_g         double precision not null check (mass_g >= 0 and mass_g < 'Infinity'),
    lightest_g     double precision not null check (lightest_g >= 0 and lightest_g < 'Infinity'),
    square_sum_g2  double precision not null check (square_sum_g2 >= 0 and square_sum_g2 < 'Infinity'),
    thinnest_mm    double precision,
    thickest_mm    double precision,
    primary key (count_id, position),
    unique (count_id, part_number),
    check ((thinnest_mm is null) = (thickest_mm is null))
);
comment on table count_line is 'What a bag should hold of one part, as planned when the count began.';

create table count_tap (
    id          bigint generated always as identity primary key,
    count_id    bigint      not null references bag_count on delete cascade,
    part_number text        not null check (part_number <> ''),
    title       text        not null,
    pieces      integer     not null check (pieces <> 0),
    way         text        not null check (way in ('tapped', 'typed', 'scanned')),
    counted_by  text        not null check (counted_by <> ''),
    counted_at  timestamptz not null
);
create index count_tap_count on count_tap (count_id);
comment on table count_tap is 'So many pieces of a part found, or taken out again; their sum is what lies in the bag.';

create table count_substitute (
    id            bigint generated always as identity primary key,
    count_id      bigint           not null references bag_count on delete cascade,
    wanted_part   text             not null check (wanted_part <> ''),
    offered_part  text             not null check (offered_part <> ''),
    offered_title text             not null,
    offered_kind  text             not null,
    offered_mass_g double precision not null check (offered_mass_g >= 0 and offered_mass_g < 'Infinity'),
    pieces        integer          not null check (pieces > 0),
    reason        text             not null check (reason <> ''),
    agreed_by     text             not null check (agreed_by <> ''),
    agreed_at     timestamptz      not null
);
create index count_substitute_count on count_substitute (count_id);
comment on table count_substitute is 'Pieces that a person agreed to take in place of another part, and why they may.';

create table count_weighing (
    id                bigint generated always as identity primary key,
    count_id          bigint           not null references bag_count on delete cascade,
    resolution_g      double precision not null check (resolution_g > 0),
    sample_pieces     integer          not null check (sample_pieces > 0),
    error_probability double precision not null check (error_probability > 0 and error_probability < 0.5),
    scatter_kinds     text[]           not null,
    scatters          double precision[] not null,
    off_scale         text[]           not null,
    tare_g            double precision not null check (tare_g >= 0),
    gross_g           double precision not null check (gross_g >= tare_g and gross_g < 'Infinity'),
    weighed_by        text             not null check (weighed_by <> ''),
    weighed_at        timestamptz      not null,
    check (cardinality(scatter_kinds) = cardinality(scatters))
);
create index count_weighing_count on count_weighing (count_id);
comment on table count_weighing is 'What a scale showed for the bag, and by what it is judged.';

create function refuse_changing_a_signed_count() returns trigger language plpgsql as $$
begin
    if old.signed_at is not null then
        raise exception 'count % is signed and stays as it is', old.id using errcode = 'restrict_violation';
    end if;
    return case when tg_op = 'DELETE' then old else new end;
end $$;
create trigger bag_count_stays before update or delete on bag_count
    for each row execute function refuse_changing_a_signed_count();

-- Taking the row's lock makes a writer that came while somebody signed wait, and then see the signature.
create function refuse_changing_parts_of_a_signed_count() returns trigger language plpgsql as $$
declare
    signed timestamptz;
begin
    if tg_op <> 'INSERT' then
        select signed_at into signed from bag_count where id = old.count_id for share;
        if signed is not null then
            raise exception 'count % is signed and stays as it is', old.count_id
                using errcode = 'restrict_violation';
        end if;
    end if;
    if tg_op = 'DELETE' then
        return old;
    end if;
    select signed_at into signed from bag_count where id = new.count_id for share;
    if signed is not null then
        raise exception 'count % is signed and stays as it is', new.count_id using errcode = 'restrict_violation';
    end if;
    return new;
end $$;
create trigger count_line_stays before insert or update or delete on count_line
    for each row execute function refuse_changing_parts_of_a_signed_count();
create trigger count_tap_stays before insert or update or delete on count_tap
    for each row execute function refuse_changing_parts_of_a_signed_count();
create trigger count_substitute_stays before insert or update or delete on count_substitute
    for each row execute function refuse_changing_parts_of_a_signed_count();
create trigger count_weighing_stays before insert or update or delete on count_weighing
    for each row execute function refuse_changing_parts_of_a_signed_count();

create function refuse_emptying_counts() returns trigger language plpgsql as $$
begin
    raise exception 'counts are not emptied' using errcode = 'restrict_violation';
end $$;
create trigger bag_count_is_not_emptied before truncate on bag_count
    execute function refuse_emptying_counts();
