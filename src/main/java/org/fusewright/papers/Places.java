package org.fusewright.papers;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Where a part goes, in few words: cavities of one block name the block once ("B1-1a, 1b, 2a"),
 * four or more that follow each other become a range ("B1-1a to 2b"), leads and splices of one
 * circuit name the circuit once ("pump/out, return"), and what is named twice is counted.
 */
final class Places {

    private static final Pattern CAVITY = Pattern.compile("(B\\d+)-(\\d{1,3})([ab])");
    private static final int SHORTEST_RANGE = 4;

    private Places() {}

    static String compact(List<String> places) {
        Map<String, List<Integer>> cavities = new LinkedHashMap<>();
        Map<String, List<String>> leads = new LinkedHashMap<>();
        Map<String, Integer> others = new LinkedHashMap<>();
        for (String place : places) {
            Matcher cavity = CAVITY.matcher(place);
            if (cavity.matches()) {
                int number = 2 * Integer.parseInt(cavity.group(2));
                int side = cavity.group(3).equals("a") ? 0 : 1;
                cavities.computeIfAbsent(cavity.group(1), block -> new ArrayList<>())
                        .add(number + side);
            } else if (place.indexOf('/') > 0) {
                int slash = place.lastIndexOf('/') + 1;
                leads.computeIfAbsent(place.substring(0, slash), owner -> new ArrayList<>())
                        .add(place.substring(slash));
            } else {
                others.merge(place, 1, Integer::sum);
            }
        }
        List<String> words = new ArrayList<>();
        cavities.forEach((block, numbers) -> words.add(block + "-" + ranges(numbers)));
        leads.forEach((owner, names) -> words.add(owner + String.join(", ", names)));
        others.forEach((place, count) -> words.add(count == 1 ? place : count + " × " + place));
        return String.join("; ", words);
    }

    private static String ranges(List<Integer> numbers) {
        List<Integer> sorted = numbers.stream().sorted().toList();
        List<String> words = new ArrayList<>();
        for (int from = 0; from < sorted.size(); ) {
            int to = from;
            while (to + 1 < sorted.size() && sorted.get(to + 1) == sorted.get(to) + 1) {
                to++;
            }
            if (to - from + 1 >= SHORTEST_RANGE) {
                words.add(name(sorted.get(from)) + " to " + name(sorted.get(to)));
            } else {
                sorted.subList(from, to + 1).forEach(number -> words.add(name(number)));
            }
            from = to + 1;
        }
        return String.join(", ", words);
    }

    private static String name(int number) {
        return number / 2 + (number % 2 == 0 ? "a" : "b");
    }
}
