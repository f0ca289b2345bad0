package org.fusewright.jobs.web;

import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.kit.Kit;
import org.fusewright.jobs.StoredJob;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * What the page of one job shows.
 *
 * @param kit empty when the catalog of today has no kit for the job; the form says why
 * @param notice what the user must know first; empty for nothing
 * @param refreshed fields whose faults are sent anew
 * @param whatIf the answer to what was asked of a circuit
 */
public record JobView(
        StoredJob job,
        JobForm form,
        Optional<KitView> kit,
        String notice,
        Set<String> refreshed,
        Optional<WhatIfView> whatIf) {
    public JobView {
        refreshed = new LinkedHashSet<>(refreshed);
    }

    static JobView of(StoredJob job, Function<StoredJob, Kit> planner) {
        try {
            Kit kit = planner.apply(job);
            return new JobView(
                    job,
                    JobForm.of(job.document(), List.of()),
                    Optional.of(new KitView(kit)),
                    "",
                    Set.of(),
                    Optional.empty());
        } catch (MalformedJobException malformed) {
            return new JobView(
                    job,
                    JobForm.of(job.document(), malformed.problems()),
                    Optional.empty(),
                    "",
                    Set.of(),
                    Optional.empty());
        }
    }

    JobView withForm(JobForm typed) {
        return new JobView(job, typed, kit, notice, refreshed, whatIf);
    }

    JobView withNotice(String text) {
        return new JobView(job, form, kit, text, refreshed, whatIf);
    }

    JobView refreshing(Set<String> fields) {
        return new JobView(job, form, kit, notice, fields, whatIf);
    }

    JobView withWhatIf(WhatIfView answer) {
        return new JobView(job, form, kit, notice, refreshed, Optional.of(answer));
    }
}
