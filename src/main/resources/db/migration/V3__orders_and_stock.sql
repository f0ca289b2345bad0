-- Stock is a ledger: what lies on the shelf is the sum of its moves. Only the minimum stays an entry.

create table stock_move (
    id          bigint generated always as identity primary key,
    part_number text           not null check (part_number <> ''),
    quantity    numeric(14, 3) not null check (quantity <> 0),
    reason      text           not null
        check (reason in ('opening', 'stocktake', 'removed', 'delivery', 'used')),
    note        text           not null,
    moved_at    timestamptz    not null
);
create index stock_move_part_number on stock_move (part_number) include (quantity);
comment on table stock_move is
    'Pieces or metres that came onto the shelf or left it; never changed, never deleted. Parts may be gone from the catalog.';

insert into stock_move (part_number, quantity, reason, note, moved_at)
select part_number, on_hand, 'opening', '', now() from stock_entry where on_hand <> 0 order by part_number;
alter table stock_entry drop column on_hand;
comment on table stock_entry is 'The level below which a part is ordered, in pieces or metres.';

create function keep_as_written() returns trigger language plpgsql as $$
begin
    raise exception 'rows of % are only added', tg_table_name using errcode = 'restrict_violation';
end
$$;
create trigger keep_stock_moves before update or delete on stock_move
    for each row execute function keep_as_written();
create trigger keep_all_stock_moves before truncate on stock_move
    for each statement execute function keep_as_written();

alter table supplier
    add minimum_order numeric(14, 6) check (minimum_order >= 0),
    add minimum_currency text check (minimum_currency ~ '^[A-Z]{3}$'),
    add check ((minimum_order is null) = (minimum_currency is null));
comment on column supplier.minimum_order is 'The least that one order must be worth; null where anything goes.';

-- Orders outlive the catalog that they were made of, so nothing here refers to it.

create table order_count (
    year integer primary key check (year > 0),
    last integer not null check (last > 0)
);
comment on table order_count is 'The last number given to a purchase order in a year.';

create table purchase_order (
    id            bigint generated always as identity primary key,
    number        text        not null unique check (number <> ''),
    supplier_code text        not null check (supplier_code <> ''),
    supplier_name text        not null check (supplier_name <> ''),
    currency      text        not null check (currency ~ '^[A-Z]{3}$'),
    state         text        not null
        check (state in ('draft', 'sent', 'partly received', 'received', 'cancelled')),
    wanted_by     date,
    ordered_on    date,
    version       bigint      not null check (version >= 0),
    created_at    timestamptz not null,
    changed_at    timestamptz not null,
    pdf_a4        bytea,
    pdf_letter    bytea,
    csv           bytea,
    ubl           bytea,
    check (changed_at >= created_at),
    check (state <> 'draft' or ordered_on is null),
    check (state not in ('sent', 'partly received', 'received') or ordered_on is not null),
    check ((ordered_on is null) = (pdf_a4 is null)),
    check ((ordered_on is null) = (pdf_letter is null)),
    check ((ordered_on is null) = (csv is null)),
    check ((ordered_on is null) = (ubl is null))
);
create index purchase_order_state on purchase_order (state);
comment on table purchase_order is
    'One order at one supplier; its papers are kept as they went out. Version counts changes and turns down stale ones.';

create table purchase_order_line (
    order_id    bigint         not null references purchase_order on delete cascade,
    line        integer        not null check (line > 0),
    part_number text           not null check (part_number <> ''),
    title       text           not null,
    unit        text           not null check (unit in ('each', 'm')),
    pack_size   integer        not null check (pack_size > 0),
    quantity    integer        not null check (quantity > 0),
    unit_price  numeric(14, 6) not null check (unit_price >= 0),
    price       numeric(18, 3) not null check (price >= 0),
    primary key (order_id, line),
    check (quantity % pack_size = 0)
);
create index purchase_order_line_part_number on purchase_order_line (part_number);
comment on table purchase_order_line is 'Pieces or metres of one offer, with the price that was in force.';

create table delivery (
    id          bigint generated always as identity primary key,
    order_id    bigint      not null references purchase_order,
    note        text        not null check (note <> ''),
    received_at timestamptz not null,
    unique (order_id, note)
);
comment on table delivery is
    'Goods that came for an order, under the number of their delivery note: the same note is booked once.';

create table delivery_line (
    delivery_id bigint         not null references delivery,
    order_id    bigint         not null,
    line        integer        not null,
    quantity    numeric(14, 3) not null check (quantity > 0),
    primary key (delivery_id, line),
    foreign key (order_id, line) references purchase_order_line (order_id, line)
);
create index delivery_line_order on delivery_line (order_id, line) include (quantity);
comment on table delivery_line is 'What came of one line of the order.';

create trigger keep_deliveries before update or delete on delivery
    for each row execute function keep_as_written();
create trigger keep_delivery_lines before update or delete on delivery_line
    for each row execute function keep_as_written();

create function keep_sent_orders() returns trigger language plpgsql as $$
begin
    if old.ordered_on is null then
        return case tg_op when 'DELETE' then old else new end;
    end if;
    if tg_op = 'UPDATE'
        and (new.number, new.supplier_code, new.supplier_name, new.currency, new.wanted_by, new.ordered_on,
             new.pdf_a4, new.pdf_letter, new.csv, new.ubl)
            is not distinct from
            (old.number, old.supplier_code, old.supplier_name, old.currency, old.wanted_by, old.ordered_on,
             old.pdf_a4, old.pdf_letter, old.csv, old.ubl)
    then
        return new;
    end if;
    raise exception 'order % was sent and stays as it is', old.number using errcode = 'restrict_violation';
end
$$;
create trigger keep_sent_orders before update or delete on purchase_order
    for each row execute function keep_sent_orders();

create function keep_sent_order_lines() returns trigger language plpgsql as $$
begin
    if exists (select 1 from purchase_order
               where id = coalesce(old.order_id, new.order_id) and ordered_on is not null) then
        raise exception 'a sent order stays as it is' using errcode = 'restrict_violation';
    end if;
    return case tg_op when 'DELETE' then old else new end;
end
$$;
create trigger keep_sent_order_lines before insert or update or delete on purchase_order_line
    for each row execute function keep_sent_order_lines();
