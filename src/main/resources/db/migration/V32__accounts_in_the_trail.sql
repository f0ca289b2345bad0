-- People and shared quotes join the trail of changes; what could let somebody in is left out of it.

call join_trail('account', 'person', 'id', '{id}', left_out => '{password_hash}');
call join_trail('quote_share', 'quote', 'quote_id', '{id}', left_out => '{secret_hash}');
