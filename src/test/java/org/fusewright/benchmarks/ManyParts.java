package org.fusewright.benchmarks;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The sample catalog's files with many drawn plugs, seals and terminals more, of families that no
 * kit asks for.
 */
final class ManyParts {
    private static final int SUPPLIERS = 12;
    private static final List<String> COLOURS =
            List.of("black", "grey", "green", "white", "orange", "blue", "brown", "violet");
    private static final List<String> SHAPES =
            List.of("round", "flat", "stepped", "ribbed", "tapered", "grooved");
    private static final List<String> BRANDS = List.of("Ashgrave", "Bellmoor", "Cindercot");

    private ManyParts() {}

    static Map<String, byte[]> sample() {
        Map<String, byte[]> files = new TreeMap<>();
        try (Stream<Path> entries = Files.list(Path.of("catalog-sample"))) {
            for (Path entry : entries.filter(e -> e.toString().endsWith(".csv")).toList()) {
                files.put(entry.getFileName().toString(), Files.readAllBytes(entry));
            }
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
        return files;
    }

    /**
     * @param cents is added to each price, so that catalogs differ in nothing but that
     */
    static Map<String, byte[]> draw(int parts, int offers, int cents) {
        Random random = new Random(parts);
        Map<String, byte[]> files = sample();
        Map<String, StringBuilder> rows = new TreeMap<>();
        for (int s = 0; s < SUPPLIERS; s++) {
            rows(rows, "suppliers.csv").append("B%02d,Supplier %d,,\n".formatted(s, s));
        }
        for (int p = 0; p < parts; p++) {
            String number = "BN-%06d-%s".formatted(p, Integer.toString(random.nextInt(1296), 36));
            String item =
                    "%s,%%s %s %s %d for opening %d,%s,%d.%d"
                            .formatted(
                                    number,
                                    pick(COLOURS, random),
                                    pick(SHAPES, random),
                                    random.nextInt(2_000),
                                    random.nextInt(60),
                                    pick(BRANDS, random),
                                    random.nextInt(9),
                                    random.nextInt(10));
            switch (p % 3) {
                case 0 -> rows(rows, "plugs.csv").append(item.formatted("Plug")).append(",BN\n");
                case 1 ->
                        rows(rows, "seals.csv")
                                .append(item.formatted("Seal"))
                                .append(",BN,1.5,2.5\n");
                default ->
                        rows(rows, "terminals.csv")
                                .append(item.formatted("Terminal"))
                                .append(",BN,0.5,1.5,20,3,5\n");
            }
            int first = random.nextInt(SUPPLIERS);
            for (int o = 0; o < offers; o++) {
                int price = 5 + random.nextInt(500) + cents;
                rows(rows, "offers.csv")
                        .append(
                                "B%02d,%s,%d,EUR,%s,%d\n"
                                        .formatted(
                                                (first + o) % SUPPLIERS,
                                                number,
                                                1 + random.nextInt(50),
                                                breaks(price, random.nextInt(4)),
                                                random.nextInt(30)));
            }
        }
        rows.forEach((file, more) -> files.put(file, joined(files.get(file), more)));
        return files;
    }

    private static StringBuilder rows(Map<String, StringBuilder> rows, String file) {
        return rows.computeIfAbsent(file, _ -> new StringBuilder());
    }

    private static String pick(List<String> words, Random random) {
        return words.get(random.nextInt(words.size()));
    }

    private static String breaks(int cents, int more) {
        StringBuilder breaks = new StringBuilder("1=" + BigDecimal.valueOf(cents, 2));
        for (int b = 1; b <= more; b++) {
            breaks.append(
                    " %d=%s".formatted(50 * b, BigDecimal.valueOf(cents * (100 - 4L * b), 4)));
        }
        return breaks.toString();
    }

    private static byte[] joined(byte[] sample, StringBuilder more) {
        String text = new String(sample, StandardCharsets.UTF_8);
        return (text.stripTrailing() + "\n" + more).getBytes(StandardCharsets.UTF_8);
    }

    /** The import of such files, whatever is in force. */
    static HttpRequest toImport(String port, Map<String, byte[]> files) {
        String boundary = "part-of-the-catalog";
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        files.forEach(
                (name, content) -> {
                    body.writeBytes(
                            ("--%s\r\nContent-Disposition: form-data; name=\"files\";"
                                            + " filename=\"%s\"\r\nContent-Type: text/csv\r\n\r\n")
                                    .formatted(boundary, name)
                                    .getBytes(StandardCharsets.UTF_8));
                    body.writeBytes(content);
                    body.writeBytes("\r\n".getBytes(StandardCharsets.UTF_8));
                });
        body.writeBytes("--%s--\r\n".formatted(boundary).getBytes(StandardCharsets.UTF_8));
        return HttpRequest.newBuilder(
                        URI.create("http://127.0.0.1:" + port + "/api/catalog/import"))
                .header("Content-Type", "multipart/form-data; boundary=" + boundary)
                .header("If-Match", "*")
                .POST(BodyPublishers.ofByteArray(body.toByteArray()))
                .build();
    }
}
