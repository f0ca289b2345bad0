package org.fusewright.benchmarks;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.fusewright.core.kit.Kit;
import org.fusewright.papers.KitListPaper;
import org.fusewright.papers.Paper;
import org.fusewright.papers.PlainPaper;
import org.fusewright.papers.PlannedKits;
import org.fusewright.papers.SampleKits;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

import java.io.IOException;
import java.util.Collection;
import java.util.concurrent.TimeUnit;

/**
 * The kit list against what the library needs for a document of the same pages with the same text
 * in the same fonts and no drawing. Its own {@code main} prints the ratio, which should stay below
 * 2.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class KitListBenchmark {

    /** A planned kit of fourteen circuits, and one of forty made by hand. */
    @Param({"fourteen", "forty"})
    public String circuits;

    private Kit kit;
    private PlainPaper plain;

    @Setup
    public void prepare() throws IOException {
        kit = circuits.equals("forty") ? SampleKits.large() : PlannedKits.equippedQuad();
        byte[] pdf = KitListPaper.print(kit, Paper.A4);
        plain = PlainPaper.of(pdf);
        requireSameText(pdf, plain.print());
    }

    @Benchmark
    public byte[] kitList() {
        return KitListPaper.print(kit, Paper.A4);
    }

    @Benchmark
    public byte[] plainText() {
        return plain.print();
    }

    public static void main(String[] arguments) throws RunnerException {
        Collection<RunResult> results =
                new Runner(new OptionsBuilder().include(KitListBenchmark.class.getName()).build())
                        .run();
        for (String circuits : new String[] {"fourteen", "forty"}) {
            double kitList = median(results, "kitList", circuits);
            double plainText = median(results, "plainText", circuits);
            System.out.printf(
                    "%s circuits: kit list %.2f ms, plain text %.2f ms, ratio %.2f%n",
                    circuits, kitList, plainText, kitList / plainText);
        }
    }

    private static double median(Collection<RunResult> results, String method, String circuits) {
        return results.stream()
                .filter(result -> result.getParams().getBenchmark().endsWith("." + method))
                .filter(result -> result.getParams().getParam("circuits").equals(circuits))
                .findFirst()
                .orElseThrow()
                .getPrimaryResult()
                .getStatistics()
                .getPercentile(50);
    }

    private static void requireSameText(byte[] first, byte[] second) throws IOException {
        try (PDDocument one = Loader.loadPDF(first);
                PDDocument other = Loader.loadPDF(second)) {
            if (one.getNumberOfPages() != other.getNumberOfPages()
                    || !dense(one).equals(dense(other))) {
                throw new IllegalStateException("the two documents differ in pages or text");
            }
        }
    }

    private static String dense(PDDocument document) throws IOException {
        return new PDFTextStripper().getText(document).replaceAll("\\s", "");
    }
}
