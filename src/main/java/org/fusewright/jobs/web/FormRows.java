package org.fusewright.jobs.web;

import org.fusewright.core.words.Text;
import org.fusewright.jobs.load.PastedRows;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Rows of circuits that a form gets from outside: pasted from a spreadsheet, or confirmed out of a
 * customer's text.
 */
final class FormRows {
    static final String PASTE = "paste";
    static final String TAKE = "take";

    private static final Pattern CELL =
            Pattern.compile("/circuits/(\\d{1,4})/((?:loads/\\d{1,3}/)?\\w{1,20})");
    private static final Pattern WISH = Pattern.compile("wish/(\\d{1,4})/take");
    private static final String CIRCUITS = "/circuits/";
    private static final String RUN = "1 m";

    private final MultiValueMap<String, String> fields;

    private FormRows(MultiValueMap<String, String> fields) {
        this.fields = new LinkedMultiValueMap<>(fields);
    }

    /**
     * The fields with what was pasted ("pasted", at the cell "at") in them.
     *
     * @param leftOver gets what belongs nowhere
     */
    static MultiValueMap<String, String> paste(
            MultiValueMap<String, String> fields, List<Text> leftOver) {
        FormRows form = new FormRows(fields);
        Matcher cell = CELL.matcher(text(fields, "at"));
        int circuit = cell.matches() ? Integer.parseInt(cell.group(1)) : form.count();
        String column =
                cell.matches() ? cell.group(2).replaceFirst("^loads/\\d+/", "loads/0/") : "";
        PastedRows pasted = PastedRows.read(text(fields, "pasted"), column);
        int load = 0;
        circuit = Math.min(circuit, form.count()) - 1;
        for (PastedRows.Row row : pasted.rows()) {
            if (row.load() && circuit >= 0) {
                load++;
                form.fillLoad(circuit, load, row.texts());
            } else {
                circuit++;
                load = 0;
                form.fillCircuit(circuit, row.texts());
            }
        }
        leftOver.addAll(pasted.leftOver());
        return form.fields;
    }

    /** The fields with the rows that were read from a text and are ticked. */
    static MultiValueMap<String, String> take(MultiValueMap<String, String> fields) {
        FormRows form = new FormRows(fields);
        for (String name : List.copyOf(fields.keySet())) {
            Matcher wish = WISH.matcher(name);
            if (wish.matches()) {
                form.takeWish("wish/" + wish.group(1) + "/");
            }
        }
        return form.fields;
    }

    private void takeWish(String wish) {
        int circuit = count();
        add(circuit, text(fields, wish + "title"));
        String row = CIRCUITS + circuit + "/";
        for (Map.Entry<String, List<String>> field : List.copyOf(fields.entrySet())) {
            String name = field.getKey();
            if (name.startsWith(wish) && !field.getValue().getLast().isBlank()) {
                fields.set(row + name.substring(wish.length()), field.getValue().getLast());
            }
        }
        fields.remove(row + "take");
        if (!text(fields, wish + "relay").isEmpty()) {
            fields.remove(row + "relay");
            fields.set(row + "relay/triggerFrom", trigger());
            fields.set(row + "relay/triggerM", RUN);
            fields.set(row + "relay/groundM", "0.3 m");
        }
        if (text(fields, wish + "loads/0/amount").isBlank()) {
            fields.remove(row + "loads/0/amount");
        }
    }

    /** What closes a relay when nobody says it: the first switched feed. */
    private String trigger() {
        for (int i = 0; fields.containsKey("/feeds/" + i + "/id"); i++) {
            if (text(fields, "/feeds/" + i + "/terminal").equals("15")) {
                return text(fields, "/feeds/" + i + "/id");
            }
        }
        return "controller";
    }

    private void fillCircuit(int circuit, Map<String, String> texts) {
        if (circuit >= count()) {
            add(circuit, texts.getOrDefault("title", ""));
        }
        texts.forEach((name, text) -> fields.set(CIRCUITS + circuit + "/" + name, text));
    }

    private void fillLoad(int circuit, int load, Map<String, String> texts) {
        String row = CIRCUITS + circuit + "/loads/" + load + "/";
        for (Map.Entry<String, String> text : texts.entrySet()) {
            String name =
                    switch (text.getKey()) {
                        case "title" -> "title";
                        case "runM" -> "branchM";
                        default -> text.getKey().replaceFirst("^loads/0/", "");
                    };
            boolean ofLoads = !name.contains("/") || name.startsWith("inrush/");
            if (ofLoads && !text.getValue().isBlank()) {
                fields.set(row + name, text.getValue());
            }
        }
        List.of("feed", "location").forEach(name -> fields.remove(row + name));
    }

    private void add(int circuit, String title) {
        String row = CIRCUITS + circuit + "/";
        fields.set(row + "id", CircuitNames.free(title, circuit, listIds()));
        fields.set(row + "feed", text(fields, "/feeds/0/id"));
        fields.set(row + "location", text(fields, "/circuits/0/location"));
        fields.set(row + "runM", RUN);
        fields.set(row + "loads/0/kind", "resistive");
        fields.set(row + "loads/0/amount", "10");
        fields.set(row + "loads/0/unit", "W");
    }

    private int count() {
        int count = 0;
        while (fields.containsKey(CIRCUITS + count + "/id")) {
            count++;
        }
        return count;
    }

    private Set<String> listIds() {
        Set<String> ids = new HashSet<>();
        for (int i = 0; i < count(); i++) {
            ids.add(text(fields, CIRCUITS + i + "/id"));
        }
        return ids;
    }

    private static String text(MultiValueMap<String, String> fields, String name) {
        return new ArrayList<>(fields.getOrDefault(name, List.of(""))).getLast();
    }
}
