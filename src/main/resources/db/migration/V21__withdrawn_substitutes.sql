-- Taking back what was agreed adds a row; the agreement stays readable.

create table count_withdrawal (
    substitute_id bigint primary key references count_substitute on delete cascade,
    count_id      bigint      not null references bag_count on delete cascade,
    withdrawn_by  text        not null check (withdrawn_by <> ''),
    withdrawn_at  timestamptz not null
);
create index count_withdrawal_count on count_withdrawal (count_id);
comment on table count_withdrawal is 'Agreements to take one part in place of another that a person took back.';

create trigger count_withdrawal_stays before insert or update or delete on count_withdrawal
    for each row execute function refuse_changing_parts_of_a_signed_count();
