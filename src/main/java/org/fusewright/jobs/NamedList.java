package org.fusewright.jobs;

import java.util.List;

/** The lists of a job's document whose rows have names, and what in its circuits refers to them. */
public enum NamedList {
    FEEDS("feeds", "id", List.of("/feed", "/relay/triggerFrom")),
    CIRCUITS("circuits", "id", List.of("/relay/contactFrom")),
    LOCATIONS("locations", "name", List.of("/location"));

    private final String field;
    private final String key;
    private final List<String> references;

    NamedList(String field, String key, List<String> references) {
        this.field = field;
        this.key = key;
        this.references = references;
    }

    /** The field of the document that holds it. */
    public String field() {
        return field;
    }

    /** The field of a row that holds its name. */
    public String key() {
        return key;
    }

    /** Where a circuit names a row of this list, as pointers into the circuit. */
    public List<String> references() {
        return references;
    }
}
