package org.fusewright.jobs.web;

import org.fusewright.core.check.Check;
import org.fusewright.core.check.Verdict;

import java.util.Comparator;
import java.util.List;

/** What the checks of one thing say: its circuit, feed, block, or the job itself. */
public record Said(List<Check> checks) {
    public Said {
        checks = List.copyOf(checks);
    }

    /** The worst verdict; a pass where nothing was checked. */
    public Verdict worst() {
        return checks.stream()
                .map(Check::verdict)
                .max(Comparator.naturalOrder())
                .orElse(Verdict.PASS);
    }

    /** The checks that do not pass, the worst first. */
    public List<Check> open() {
        return checks.stream()
                .filter(check -> check.verdict() != Verdict.PASS)
                .sorted(Comparator.comparing(Check::verdict).reversed())
                .toList();
    }

    public List<Check> passed() {
        return checks.stream().filter(check -> check.verdict() == Verdict.PASS).toList();
    }

    /** The sign of the worst verdict, so that it does not stand on colour alone. */
    public String sign() {
        return switch (worst()) {
            case PASS -> "✓";
            case CAUTION -> "!";
            case FAIL -> "✗";
        };
    }

    /** How many checks have the worst verdict. */
    public long count() {
        return checks.stream().filter(check -> check.verdict() == worst()).count();
    }
}
