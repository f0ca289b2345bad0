package org.fusewright.core.quote;

import org.fusewright.core.catalog.PartNumber;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Finds the mark-up of a line: that of its part, else of its group, else the usual one. */
final class MarkUps {
    private final Map<PartNumber, BigDecimal> parts = new HashMap<>();
    private final Map<String, BigDecimal> groups = new HashMap<>();
    private Optional<BigDecimal> usual = Optional.empty();

    MarkUps(List<MarkUp> markUps) {
        for (MarkUp markUp : markUps) {
            if (markUp.part().isPresent()) {
                parts.put(markUp.part().get(), markUp.percent());
            } else if (markUp.group().isPresent()) {
                groups.put(markUp.group().get(), markUp.percent());
            } else {
                usual = Optional.of(markUp.percent());
            }
        }
    }

    Optional<BigDecimal> findPercent(PartNumber part, String group) {
        return Optional.ofNullable(parts.get(part)).or(() -> findPercent(group));
    }

    Optional<BigDecimal> findPercent(String group) {
        return Optional.ofNullable(groups.get(group)).or(() -> usual);
    }
}
