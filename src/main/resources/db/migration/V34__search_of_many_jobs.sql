-- Jobs and quotes are found by any part of their texts, however many there are: an index of the
-- groups of three letters narrows down what is looked at. A change of the document alone touches
-- neither index.

create function letter_groups(said text) returns text[]
    language sql immutable strict parallel safe
    as $$
        select coalesce(array_agg(distinct substr(said, n, 3)), '{}')
        from generate_series(1, length(said) - 2) n
    $$;
comment on function letter_groups is
    'Every group of three letters in a row; a text that holds another holds all of its groups.';

create function job_said(reference text, title text, customer text) returns text
    language sql immutable strict parallel safe
    as $$ select lower(reference || e'\n' || title || e'\n' || customer) $$;
comment on function job_said is 'What a job is searched by.';

create index job_search on job using gin (letter_groups(job_said(reference, title, customer)));

create function quote_said(number text, job_reference text, title text, customer text) returns text
    language sql immutable strict parallel safe
    as $$ select lower(number || e'\n' || job_reference || e'\n' || title || e'\n' || customer) $$;
comment on function quote_said is 'What a quote is searched by.';

create index quote_search
    on quote using gin (letter_groups(quote_said(number, job_reference, title, customer)));
