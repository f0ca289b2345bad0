-- The trail of changes: who changed what, when, from what to what. Triggers write it, whoever makes the change and by
-- whatever way; nothing changes or removes what it holds.

create table change_entry (
    id         bigint generated always as identity primary key,
    made_at    timestamptz not null,
    made_by    text        not null check (made_by <> ''),
    -- Of which record, such as job 5, ...
    kind       text        not null check (kind <> ''),
    record     text        not null,
    -- ... and which of the rows that make it up.
    table_name text        not null check (table_name <> ''),
    row_key    text        not null,
    action     text        not null check (action in ('added', 'changed', 'removed')),
    before     jsonb check (jsonb_typeof(before) = 'object'),
    after      jsonb check (jsonb_typeof(after) = 'object'),
    check ((action = 'added') = (before is null)),
    check ((action = 'removed') = (after is null))
);
create index change_entry_record on change_entry (kind, record, id);
create index change_entry_kind on change_entry (kind, id);
create index change_entry_made_by on change_entry (made_by, id);
comment on table change_entry is
    'Every change of a row: all of it when added or removed, else the columns that differ. Written by triggers alone.';

create function refuse_touching_the_trail() returns trigger language plpgsql as $$
begin
    raise exception 'the trail is written by changes alone, and stays as it is written'
        using errcode = 'restrict_violation';
end
$$;
create trigger trail_stays before update or delete or truncate on change_entry
    for each statement execute function refuse_touching_the_trail();
create trigger trail_is_written_by_triggers before insert on change_entry
    for each statement when (pg_trigger_depth() = 0) execute function refuse_touching_the_trail();

-- The program names whoever asked for a change at the begin of the transaction that makes it.
create function trail_author() returns text language sql stable as $$
    select coalesce(nullif(current_setting('fusewright.by', true), ''), 'service')
$$;

-- The fields whose values are others, or missing, in the second; null when there are none.
create function differing_fields(fields jsonb, others jsonb) returns jsonb language sql immutable as $$
    select jsonb_object_agg(key, value) from jsonb_each(fields) where value is distinct from others -> key
$$;

-- Files, and documents that another row keeps, are told by length and SHA-256: bytes as they are, JSON as the database
-- prints it.
create function with_digests(fields jsonb, names text[]) returns jsonb language plpgsql immutable as $$
declare
    name    text;
    content bytea;
begin
    foreach name in array names loop
        if jsonb_typeof(fields -> name) <> 'null' then
            content := case jsonb_typeof(fields -> name)
                when 'string' then (fields ->> name)::bytea
                else convert_to((fields -> name)::text, 'UTF8') end;
            fields := jsonb_set(fields, array[name],
                jsonb_build_object('bytes', length(content), 'sha256', encode(sha256(content), 'hex')));
        end if;
    end loop;
    return fields;
end
$$;

-- Settings: the kind of record, its column, the key's columns, the columns left out, the columns told by digest.
create function add_to_trail(table_name text, settings text[], was jsonb, becomes jsonb) returns void
    language plpgsql as $$
declare
    fields   jsonb  := coalesce(becomes, was);
    keys     text[] := settings[2];
    left_out text[] := settings[3];
    digests  text[] := settings[4];
    before   jsonb  := was - left_out;
    after    jsonb  := becomes - left_out;
    action   text   := case when was is null then 'added' when becomes is null then 'removed' else 'changed' end;
begin
    if action = 'changed' then
        before := differing_fields(was - left_out, becomes - left_out);
        if before is null then
            return;
        end if;
        after := differing_fields(becomes - left_out, was - left_out);
    end if;
    insert into change_entry (made_at, made_by, kind, record, table_name, row_key, action, before, after)
    values (now(), trail_author(), settings[0], fields ->> settings[1], table_name,
            (select string_agg(fields ->> key, ' / ' order by place)
             from unnest(keys) with ordinality as k (key, place)),
            action, with_digests(before, digests), with_digests(after, digests));
end
$$;

create function note_change() returns trigger language plpgsql set timezone to 'UTC' as $$
begin
    perform add_to_trail(tg_table_name, tg_argv,
        case when tg_op <> 'INSERT' then to_jsonb(old) end,
        case when tg_op <> 'DELETE' then to_jsonb(new) end);
    return null;
end
$$;

create function note_emptying() returns trigger language plpgsql set timezone to 'UTC' as $$
declare
    was jsonb;
begin
    for was in execute format('select to_jsonb(t) from %I.%I t', tg_table_schema, tg_table_name) loop
        perform add_to_trail(tg_table_name, tg_argv, was, null);
    end loop;
    return null;
end
$$;

-- Makes a table's changes part of the trail, all columns but those left out. What must never be read there, such as a
-- secret, is left out; what is large and kept elsewhere is told by digest, as all bytea is.
create procedure join_trail(joining text, kind text, record text, keys text[],
                            left_out text[] default '{}', digests text[] default '{}')
    language plpgsql as $$
declare
    settings text;
begin
    digests := digests || array(
        select attname::text from pg_attribute
        where attrelid = joining::regclass and atttypid = 'bytea'::regtype and not attisdropped
          and attname <> all (left_out)
        order by attnum);
    settings := format('%L, %L, %L, %L, %L', kind, record, keys, left_out, digests);
    execute format('create trigger note_change after insert or update or delete on %I '
        'for each row execute function note_change(%s)', joining, settings);
    execute format('create trigger note_emptying before truncate on %I '
        'for each statement execute function note_emptying(%s)', joining, settings);
end
$$;

-- Left out: counters that turn down stale changes, and times that the entries have themselves.
call join_trail('job', 'job', 'id', '{id}', left_out => '{version,changed_at}');
-- A revision's document is in the entry of its job.
call join_trail('job_revision', 'job', 'job_id', '{job_id,revision}', digests => '{document}');
call join_trail('quote', 'quote', 'id', '{id}', left_out => '{version,changed_at}');
call join_trail('quote_revision', 'quote', 'quote_id', '{quote_id,revision}');
call join_trail('quote_demand', 'quote', 'quote_id', '{quote_id,part_number}');
call join_trail('purchase_order', 'order', 'id', '{id}', left_out => '{version,changed_at}');
call join_trail('purchase_order_line', 'order', 'order_id', '{order_id,line}');
call join_trail('delivery', 'order', 'order_id', '{id}');
call join_trail('delivery_line', 'order', 'order_id', '{delivery_id,line}');
call join_trail('bag_count', 'count', 'id', '{id}');
call join_trail('count_line', 'count', 'count_id', '{count_id,position}');
call join_trail('count_tap', 'count', 'count_id', '{id}');
call join_trail('count_substitute', 'count', 'count_id', '{id}');
call join_trail('count_withdrawal', 'count', 'count_id', '{substitute_id}');
call join_trail('count_weighing', 'count', 'count_id', '{id}');
call join_trail('stock_move', 'part', 'part_number', '{id}');
call join_trail('catalog_release', 'catalog', 'version', '{id}');

-- An import removes all rows of the catalog and adds them anew. So the catalog is kept as it was before the first change
-- of a transaction, and compared with what it is at the end.

create view catalog_line as
select 'part' as kind, number as record, 'part' as table_name, number as row_key, to_jsonb(part) as fields
from part
union all
select 'part', part_number, 'stock_entry', part_number, to_jsonb(stock_entry)
from stock_entry
union all
-- An offer's id is its place in the import: others come and go before it.
select 'part', part_number, 'offer', concat_ws(' / ', part_number, supplier_code, currency, pack_size),
       to_jsonb(offer) - 'id' || jsonb_build_object('prices', coalesce(price.prices, '{}'))
from offer
left join (select offer_id, jsonb_object_agg(from_quantity, unit_price) as prices
           from offer_price group by offer_id) price on price.offer_id = offer.id
union all
select 'supplier', code, 'supplier', code, to_jsonb(supplier)
from supplier
union all
select 'labour', code, 'labour_rate', code, to_jsonb(labour_rate)
from labour_rate
union all
select 'mark-up', coalesce(part, line_group, ''), 'mark_up', coalesce('part ' || part, 'group ' || line_group, ''),
       to_jsonb(mark_up) - 'id'
from mark_up
union all
select 'shipping', code, 'shipping_class', concat_ws(' / ', code, currency), to_jsonb(shipping_class)
from shipping_class
union all
select 'tax', code, 'tax_kind', code, to_jsonb(tax_kind)
from tax_kind;
comment on view catalog_line is 'The catalog as the trail tells it: what is left out here is no change.';

create function note_catalog_changes() returns trigger language plpgsql as $$
begin
    insert into change_entry (made_at, made_by, kind, record, table_name, row_key, action, before, after)
    select now(), trail_author(), coalesce(b.kind, a.kind), coalesce(b.record, a.record), table_name, row_key,
           case when b.fields is null then 'added' when a.fields is null then 'removed' else 'changed' end,
           case when a.fields is null then b.fields else differing_fields(b.fields, a.fields) end,
           case when b.fields is null then a.fields else differing_fields(a.fields, b.fields) end
    from catalog_before b full join catalog_line a using (table_name, row_key)
    where b.fields is distinct from a.fields
    order by 3, 4, 5, 6;
    return null;
end
$$;

create function remember_catalog() returns trigger language plpgsql as $$
begin
    -- Others would have their changes told as ours.
    lock table part, stock_entry, offer, offer_price, supplier, labour_rate, mark_up, shipping_class, tax_kind
        in share row exclusive mode;
    create temp table catalog_before on commit drop as select * from catalog_line;
    create temp table catalog_touched (at_last boolean) on commit drop;
    create constraint trigger note_catalog_changes after insert on catalog_touched
        deferrable initially deferred for each row execute function note_catalog_changes();
    insert into catalog_touched values (true);
    perform set_config('fusewright.catalog_remembered', 'yes', true);
    return null;
end
$$;

create procedure join_trail_of_catalog(joining text) language plpgsql as $$
begin
    execute format('create trigger remember_catalog before insert or update or delete or truncate on %I '
        'for each statement when (current_setting(''fusewright.catalog_remembered'', true) is distinct from ''yes'') '
        'execute function remember_catalog()', joining);
end
$$;
call join_trail_of_catalog('part');
call join_trail_of_catalog('stock_entry');
call join_trail_of_catalog('offer');
call join_trail_of_catalog('offer_price');
call join_trail_of_catalog('supplier');
call join_trail_of_catalog('labour_rate');
call join_trail_of_catalog('mark_up');
call join_trail_of_catalog('shipping_class');
call join_trail_of_catalog('tax_kind');
