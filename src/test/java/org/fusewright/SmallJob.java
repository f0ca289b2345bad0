package org.fusewright;

/** The smallest job that makes a kit, for tests that need some job. */
public final class SmallJob {

    private SmallJob() {}

    /** As JSON, with the reference for its title. */
    public static String document(String reference) {
        return document(reference, reference);
    }

    /** As JSON. */
    public static String document(String reference, String title) {
        return """
        {"reference": "%s", "title": "%s", "supply": {"nominalV": 12},
         "feeds": [{"id": "battery", "terminal": "30", "lengthM": 0.5, "sourceDistanceM": 0.1}],
         "circuits": [{"id": "horn", "feed": "battery", "runM": 1,
                       "loads": [{"kind": "coil", "amps": 3}]}]}
        """
                .formatted(reference, title);
    }
}
