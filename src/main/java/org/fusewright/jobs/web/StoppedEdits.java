package org.fusewright.jobs.web;

import org.springframework.stereotype.Component;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/**
 * Changes that were stopped by those who sent them, by the names that their pages gave them. One
 * that is not kept yet is given up; one that is kept already stays.
 */
@Component
class StoppedEdits {
    private static final int REMEMBERED = 1000;

    private final Set<String> names =
            Collections.synchronizedSet(
                    Collections.newSetFromMap(
                            new LinkedHashMap<>() {
                                @Override
                                protected boolean removeEldestEntry(
                                        Map.Entry<String, Boolean> eldest) {
                                    return size() > REMEMBERED;
                                }
                            }));

    void stop(String edit) {
        names.add(edit);
    }

    /** Whether a change must not be kept. An empty name is that of no change. */
    boolean isStopped(String edit) {
        return !edit.isEmpty() && names.contains(edit);
    }
}
