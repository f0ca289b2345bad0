alter table job add column changed_by text not null default 'shop' check (changed_by <> '');

update job set changed_by = job_revision.changed_by
from job_revision
where job_revision.job_id = job.id
  and job_revision.revision = job.revision
  and job_revision.changed_by <> '';

alter table job alter column changed_by drop default;
comment on column job.changed_by is 'Who made the newest revision.';
