package org.fusewright.papers;

import org.fusewright.core.words.Language;
import org.fusewright.core.words.Recall;
import org.fusewright.core.words.Wording;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Where a part goes, in few words: cavities and positions of one block name the block once ("B1-1a,
 * 1b, 2a"), four or more cavities that follow each other become a range ("B1-1a to 2b"), leads and
 * splices of one circuit name the circuit once ("pump/out, return"), and what is named twice is
 * counted.
 */
final class Places {

    private static final Pattern CAVITY = Pattern.compile("(B\\d+-)(\\d{1,3})([ab])");
    private static final Pattern POSITION = Pattern.compile("(B\\d+-)(\\d+(?:/\\d+)?)");
    private static final int SHORTEST_RANGE = 4;

    private final Map<String, List<Integer>> cavities = new LinkedHashMap<>();
    private final Map<String, List<String>> named = new LinkedHashMap<>();
    private final Map<String, Integer> others = new LinkedHashMap<>();

    private final Wording wording;

    private Places(Wording wording) {
        this.wording = wording;
    }

    static String compact(List<String> places, Wording wording) {
        Places sorted = new Places(wording);
        places.forEach(place -> sorted.sort(said(place, wording)));
        return sorted.compact();
    }

    /** A place as the reader says it; a kit says it in English. */
    static String said(String place, Wording wording) {
        return wording.language() == Language.ENGLISH ? place : wording.say(Recall.place(place));
    }

    private void sort(String place) {
        Matcher cavity = CAVITY.matcher(place);
        Matcher position = POSITION.matcher(place);
        int slash = place.lastIndexOf('/') + 1;
        if (cavity.matches()) {
            int side = cavity.group(3).equals("a") ? 0 : 1;
            int number = 2 * Integer.parseInt(cavity.group(2)) + side;
            cavities.computeIfAbsent(cavity.group(1), block -> new ArrayList<>()).add(number);
        } else if (position.matches()) {
            name(position.group(1), position.group(2));
        } else if (slash > 1) {
            name(place.substring(0, slash), place.substring(slash));
        } else {
            others.merge(place, 1, Integer::sum);
        }
    }

    private void name(String owner, String place) {
        named.computeIfAbsent(owner, absent -> new ArrayList<>()).add(place);
    }

    private String compact() {
        List<String> words = new ArrayList<>();
        others.forEach((place, count) -> words.add(count == 1 ? place : count + " × " + place));
        named.forEach((owner, places) -> words.add(owner + String.join(", ", places)));
        cavities.forEach((block, numbers) -> words.add(block + ranges(numbers)));
        return String.join("; ", words);
    }

    private String ranges(List<Integer> numbers) {
        List<Integer> sorted = numbers.stream().sorted().toList();
        List<String> words = new ArrayList<>();
        for (int from = 0; from < sorted.size(); ) {
            int to = from;
            while (to + 1 < sorted.size() && sorted.get(to + 1) == sorted.get(to) + 1) {
                to++;
            }
            if (to - from + 1 >= SHORTEST_RANGE) {
                words.add(
                        wording.say(
                                "print.place.range",
                                cavity(sorted.get(from)),
                                cavity(sorted.get(to))));
            } else {
                sorted.subList(from, to + 1).forEach(number -> words.add(cavity(number)));
            }
            from = to + 1;
        }
        return String.join(", ", words);
    }

    private static String cavity(int number) {
        return number / 2 + (number % 2 == 0 ? "a" : "b");
    }
}
