-- Catalogs of hundreds of thousands of offers. An import writes only what differs, so rows are known by what they are and
-- not by their place in it, and an offer is one row with its price breaks. The trail tells what each statement changes.

drop function remember_catalog() cascade;
drop function note_catalog_changes();
drop procedure join_trail_of_catalog(text);
drop view catalog_line;

alter table offer add prices jsonb;
update offer set prices = (select jsonb_object_agg(from_quantity, trim_scale(unit_price))
                           from offer_price where offer_id = offer.id);
drop table offer_price;
alter table offer
    drop id,
    drop constraint offer_supplier_code_part_number_currency_pack_size_key,
    add primary key (supplier_code, part_number, currency, pack_size),
    alter prices set not null,
    add check (jsonb_typeof(prices) = 'object' and prices ? '1'),
    add check (not prices @? '$.* ? (@.type() != "number" || @ < 0)');
comment on table offer is
    'One supplier''s terms for one part in one pack size and one currency (ISO 4217).';
comment on column offer.prices is
    'Price breaks: the price of one unit by the number of units from which on it is valid; the first is 1.';

alter table mark_up drop id;
-- Classes may exchange their weights.
alter table shipping_class
    drop constraint shipping_class_currency_up_to_g_key,
    add unique (currency, up_to_g) deferrable initially immediate;

-- Settings: the kind of record, and the expressions for the record, for the row's key, and for the row's name among the
-- rows of its record that one entry tells together (empty: an entry for each row); %1$s stands for the row.
create function note_lines() returns trigger language plpgsql set timezone to 'UTC' as $$
declare
    kind      text := tg_argv[0];
    record    text := tg_argv[1];
    row_key   text := tg_argv[2];
    name      text := tg_argv[3];
    lines     text;
    unchanged text;
begin
    if tg_op = 'UPDATE' then
        unchanged := (
            select string_agg(format('case when w.%1$I is not distinct from b.%1$I then %1$L end', attname), ', ' order by attnum)
            from pg_attribute where attrelid = tg_relid and attnum > 0 and not attisdropped);
        lines := format(
            'select record, row_key, name, '
            'case when is_new then null when is_old then was - ''{trail_key,trail_name}''::text[] else was - same end as before, '
            'case when is_old then null when is_new then becomes - ''{trail_key,trail_name}''::text[] else becomes - same end as after '
            'from (select coalesce(%s, %s) as record, coalesce(w.trail_key, b.trail_key) as row_key, coalesce(w.trail_name, b.trail_name) as name, '
            'w.trail_key is null as is_new, b.trail_key is null as is_old, to_jsonb(w) as was, to_jsonb(b) as becomes, '
            'array[''trail_key'', ''trail_name'', %s] as same '
            'from (select *, %s as trail_key, %s as trail_name from were) w full join (select *, %s as trail_key, %s as trail_name from become) b '
            'on w.trail_key = b.trail_key and w.trail_name = b.trail_name offset 0) pair',
            format(record, 'w'), format(record, 'b'), unchanged,
            format(row_key, 'were'), format(name, 'were'), format(row_key, 'become'), format(name, 'become'));
    elsif tg_op = 'INSERT' then
        lines := format('select %s as record, %s as row_key, %s as name, null::jsonb as before, to_jsonb(b) as after from become b',
                        format(record, 'b'), format(row_key, 'b'), format(name, 'b'));
    else
        lines := format('select %s as record, %s as row_key, %s as name, to_jsonb(w) as before, null::jsonb as after from %s w',
                        format(record, 'w'), format(row_key, 'w'), format(name, 'w'),
                        case tg_op when 'TRUNCATE' then format('%I.%I', tg_table_schema, tg_table_name) else 'were' end);
    end if;
    if name <> quote_literal('') then
        lines := format(
            'select record, row_key, jsonb_object_agg(name, before) filter (where before is not null) as before, '
            'jsonb_object_agg(name, after) filter (where after is not null) as after '
            'from (%s) each_line where before is distinct from after group by record, row_key', lines);
    end if;
    execute format(
        'insert into change_entry (made_at, made_by, kind, record, table_name, row_key, action, before, after) '
        'select now(), $1, $2, record, $3, row_key, '
        'case when before is null then ''added'' when after is null then ''removed'' else ''changed'' end, before, after '
        'from (%s) line where before is distinct from after order by record, row_key', lines)
        using trail_author(), kind, tg_table_name;
    return null;
end
$$;

create procedure join_trail_of_catalog(joining text, kind text, record text, row_key text,
                                       name text default '''''') language plpgsql as $$
declare
    settings text := format('%L, %L, %L, %L', kind, record, row_key, name);
begin
    execute format('create trigger note_added after insert on %I referencing new table as become '
        'for each statement execute function note_lines(%s)', joining, settings);
    execute format('create trigger note_changed after update on %I referencing old table as were new table as become '
        'for each statement execute function note_lines(%s)', joining, settings);
    execute format('create trigger note_removed after delete on %I referencing old table as were '
        'for each statement execute function note_lines(%s)', joining, settings);
    execute format('create trigger note_emptying before truncate on %I '
        'for each statement execute function note_lines(%s)', joining, settings);
end
$$;
call join_trail_of_catalog('part', 'part', '%1$s.number', '%1$s.number');
call join_trail_of_catalog('stock_entry', 'part', '%1$s.part_number', '%1$s.part_number');
-- An import of many offers adds or prices most of them anew: the offers of a part are told together.
call join_trail_of_catalog('offer', 'part', '%1$s.part_number', '%1$s.part_number',
    name => 'concat_ws('' / '', %1$s.supplier_code, %1$s.currency, %1$s.pack_size)');
call join_trail_of_catalog('supplier', 'supplier', '%1$s.code', '%1$s.code');
call join_trail_of_catalog('labour_rate', 'labour', '%1$s.code', '%1$s.code');
call join_trail_of_catalog('mark_up', 'mark-up', 'coalesce(%1$s.part, %1$s.line_group, '''')',
    'coalesce(''part '' || %1$s.part, ''group '' || %1$s.line_group, '''')');
call join_trail_of_catalog('shipping_class', 'shipping', '%1$s.code', 'concat_ws('' / '', %1$s.code, %1$s.currency)');
call join_trail_of_catalog('tax_kind', 'tax', '%1$s.code', '%1$s.code');
