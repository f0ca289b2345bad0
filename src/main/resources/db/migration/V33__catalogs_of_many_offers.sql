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

-- Settings: the kind of record, and the expressions for the record and the row's key, with %1$s for the row.
create function note_lines() returns trigger language plpgsql set timezone to 'UTC' as $$
declare
    kind       text := tg_argv[0];
    record     text := tg_argv[1];
    row_key    text := tg_argv[2];
    was        text := case tg_op when 'TRUNCATE' then format('%I.%I', tg_table_schema, tg_table_name) else 'were' end;
    entry      text := 'insert into change_entry (made_at, made_by, kind, record, table_name, row_key, action, before, after) ';
    difference text;
    before     text;
    after      text;
begin
    if tg_op = 'UPDATE' then
        difference := (
            select string_agg(format('case when w.%1$I is distinct from b.%1$I '
                'then jsonb_build_object(%1$L, %%1$s.%1$I) else ''{}'' end', attname), ' || ' order by attnum)
            from pg_attribute where attrelid = tg_relid and attnum > 0 and not attisdropped);
        before := format('case when b.row_key is null then to_jsonb(w) - ''row_key'' when w.row_key is not null then %s end',
                         format(difference, 'w'));
        after := format('case when w.row_key is null then to_jsonb(b) - ''row_key'' when b.row_key is not null then %s end',
                        format(difference, 'b'));
        execute entry || format(
            'select now(), $1, $2, record, $3, row_key, '
            'case when before is null then ''added'' when after is null then ''removed'' else ''changed'' end, before, after '
            'from (select coalesce(%s, %s) as record, coalesce(w.row_key, b.row_key) as row_key, %s as before, %s as after '
            'from (select *, %s as row_key from were) w full join (select *, %s as row_key from become) b '
            'on w.row_key = b.row_key) line '
            'where before is distinct from after order by record, row_key',
            format(record, 'w'), format(record, 'b'), before, after, format(row_key, 'were'), format(row_key, 'become'))
            using trail_author(), kind, tg_table_name;
    elsif tg_op = 'INSERT' then
        execute entry || format(
            'select now(), $1, $2, %s, $3, %s, ''added'', null, to_jsonb(become) from become order by 4, 6',
            format(record, 'become'), format(row_key, 'become'))
            using trail_author(), kind, tg_table_name;
    else
        execute entry || format(
            'select now(), $1, $2, %s, $3, %s, ''removed'', to_jsonb(w), null from %s w order by 4, 6',
            format(record, 'w'), format(row_key, 'w'), was)
            using trail_author(), kind, tg_table_name;
    end if;
    return null;
end
$$;

create procedure join_trail_of_catalog(joining text, kind text, record text, row_key text) language plpgsql as $$
declare
    settings text := format('%L, %L, %L', kind, record, row_key);
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
call join_trail_of_catalog('offer', 'part', '%1$s.part_number',
    'concat_ws('' / '', %1$s.part_number, %1$s.supplier_code, %1$s.currency, %1$s.pack_size)');
call join_trail_of_catalog('supplier', 'supplier', '%1$s.code', '%1$s.code');
call join_trail_of_catalog('labour_rate', 'labour', '%1$s.code', '%1$s.code');
call join_trail_of_catalog('mark_up', 'mark-up', 'coalesce(%1$s.part, %1$s.line_group, '''')',
    'coalesce(''part '' || %1$s.part, ''group '' || %1$s.line_group, '''')');
call join_trail_of_catalog('shipping_class', 'shipping', '%1$s.code', 'concat_ws('' / '', %1$s.code, %1$s.currency)');
call join_trail_of_catalog('tax_kind', 'tax', '%1$s.code', '%1$s.code');
