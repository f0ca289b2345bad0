package org.fusewright.core.quote;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A circuit that the variants of a quote protect differently.
 *
 * @param devices one for each variant, in their order
 */
public record DeviceDifference(String circuit, String title, List<String> devices) {

    public DeviceDifference {
        devices = List.copyOf(devices);
    }

    /** All such circuits, in the job's order. */
    public static List<DeviceDifference> listIn(Quote quote) {
        Map<String, String> titles = new LinkedHashMap<>();
        Map<String, List<String>> devices = new LinkedHashMap<>();
        for (Variant variant : quote.variants()) {
            for (Variant.Protection protection : variant.protections()) {
                titles.putIfAbsent(protection.circuit(), protection.title());
                devices.computeIfAbsent(protection.circuit(), _ -> new ArrayList<>())
                        .add(protection.device());
            }
        }
        return devices.entrySet().stream()
                .filter(entry -> entry.getValue().stream().distinct().count() > 1)
                .map(
                        entry ->
                                new DeviceDifference(
                                        entry.getKey(),
                                        titles.get(entry.getKey()),
                                        entry.getValue()))
                .toList();
    }
}
