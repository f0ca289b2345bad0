-- As before, but rows that come or go are told together as text first, and made a document once: a document of each row and
-- one of them all took most of the time of an import of many new offers.
create or replace function note_lines() returns trigger language plpgsql set timezone to 'UTC' as $$
declare
    kind      text := tg_argv[0];
    record    text := tg_argv[1];
    row_key   text := tg_argv[2];
    name      text := tg_argv[3];
    together  boolean := name <> quote_literal('');
    lines     text;
    changed   text;
begin
    if tg_op = 'UPDATE' then
        -- The changed columns of %1$s, as a document.
        changed := (
            select string_agg(
                format('case when w.%1$I is distinct from b.%1$I then jsonb_build_object(%1$L, %2$s.%1$I) else ''{}'' end',
                       attname, '%1$s'), ' || ' order by attnum)
            from pg_attribute where attrelid = tg_relid and attnum > 0 and not attisdropped);
        lines := format(
            'select coalesce(%s, %s) as record, coalesce(w.trail_key, b.trail_key) as row_key, '
            'coalesce(w.trail_name, b.trail_name) as name, '
            'case when w.trail_key is null then null when b.trail_key is null then to_jsonb(w) - ''{trail_key,trail_name}''::text[] else %s end as before, '
            'case when b.trail_key is null then null when w.trail_key is null then to_jsonb(b) - ''{trail_key,trail_name}''::text[] else %s end as after '
            'from (select *, %s as trail_key, %s as trail_name from were) w full join (select *, %s as trail_key, %s as trail_name from become) b '
            'on w.trail_key = b.trail_key and w.trail_name = b.trail_name offset 0',
            format(record, 'w'), format(record, 'b'), format(changed, 'w'), format(changed, 'b'),
            format(row_key, 'were'), format(name, 'were'), format(row_key, 'become'), format(name, 'become'));
        if together then
            lines := format(
                'select record, row_key, (json_object_agg(name, before) filter (where before is not null))::jsonb as before, '
                '(json_object_agg(name, after) filter (where after is not null))::jsonb as after '
                'from (%s) each_line where before is distinct from after group by record, row_key', lines);
        end if;
        lines := format('select * from (%s) line where before is distinct from after', lines);
    else
        lines := format(
            'select %s as record, %s as row_key, %s as %s, null::jsonb as %s from %s line %s',
            format(record, 'line'), format(row_key, 'line'),
            case when together then format('json_object_agg(%s, to_json(line))::jsonb', format(name, 'line')) else 'to_jsonb(line)' end,
            case tg_op when 'INSERT' then 'after' else 'before' end,
            case tg_op when 'INSERT' then 'before' else 'after' end,
            case tg_op when 'INSERT' then 'become' when 'DELETE' then 'were' else format('%I.%I', tg_table_schema, tg_table_name) end,
            case when together then 'group by 1, 2' else '' end);
    end if;
    execute format(
        'insert into change_entry (made_at, made_by, kind, record, table_name, row_key, action, before, after) '
        'select now(), $1, $2, record, $3, row_key, '
        'case when before is null then ''added'' when after is null then ''removed'' else ''changed'' end, before, after '
        'from (%s) line order by record, row_key', lines)
        using trail_author(), kind, tg_table_name;
    return null;
end
$$;
