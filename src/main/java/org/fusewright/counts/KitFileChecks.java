package org.fusewright.counts;

import org.fusewright.catalogs.Catalogs;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.count.BagDesign;
import org.fusewright.core.count.Comparison;
import org.fusewright.core.count.ExpectedBag;
import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.kit.Kit;
import org.fusewright.jobs.Kits;
import org.fusewright.jobs.load.JobReader;
import org.springframework.stereotype.Service;

import tools.jackson.databind.JsonNode;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/** Checks a kit from elsewhere against the parts list of a job; nothing is kept. */
@Service
public class KitFileChecks {
    private final KeptDesigns designs;
    private final Kits kits;
    private final Catalogs catalogs;

    KitFileChecks(KeptDesigns designs, Kits kits, Catalogs catalogs) {
        this.designs = designs;
        this.kits = kits;
        this.catalogs = catalogs;
    }

    /**
     * Against a kept job.
     *
     * @param revision empty for the newest
     * @param found pieces of each part, metres of wire
     */
    public FileCheck check(long jobId, OptionalInt revision, Map<PartNumber, BigDecimal> found) {
        KeptDesigns.Design design = designs.plan(jobId, revision);
        return compare(design.kit(), design.revision(), found);
    }

    /**
     * Against a job document, which was sent at {@code /job}.
     *
     * @throws MalformedJobException with all that is wrong with it
     */
    public FileCheck check(JsonNode job, Map<PartNumber, BigDecimal> found) {
        try {
            return compare(kits.plan(JobReader.read(job)), BagDesign.NOT_KEPT, found);
        } catch (MalformedJobException e) {
            throw new MalformedJobException(
                    e.problems().stream()
                            .map(
                                    problem ->
                                            new JobProblem(
                                                    "/job" + problem.pointer(), problem.detail()))
                            .toList());
        }
    }

    private FileCheck compare(Kit kit, int revision, Map<PartNumber, BigDecimal> found) {
        Catalog catalog = catalogs.current();
        BagDesign design = BagDesign.of(kit, revision);
        Comparison comparison = Comparison.of(ExpectedBag.ofPartsList(kit), found, List.of());
        return new FileCheck(
                design,
                comparison,
                Substitutes.list(comparison, catalog, design),
                found.keySet().stream()
                        .filter(part -> catalog.findPart(part).isEmpty())
                        .collect(Collectors.toSet()));
    }
}
