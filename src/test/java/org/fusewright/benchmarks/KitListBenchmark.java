package org.fusewright.benchmarks;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.words.Wording;
import org.fusewright.papers.BenchPaper;
import org.fusewright.papers.Paper;
import org.fusewright.papers.PlainPaper;
import org.fusewright.papers.PlannedKits;
import org.fusewright.papers.SampleKits;
import org.openjdk.jmh.annotations.AuxCounters;
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

import java.io.IOException;
import java.util.OptionalInt;
import java.util.concurrent.TimeUnit;

/**
 * The kit list against what the library needs for a document of the same pages with the same text
 * in the same fonts and no drawing; {@code inTurn:ratio} is to stay below 2.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 1, time = 12) // one: events of several would be added up
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
        byte[] pdf = BenchPaper.KIT_LIST.print(kit, OptionalInt.empty(), Paper.A4, Wording.ENGLISH);
        plain = PlainPaper.of(pdf);
        requireSameText(pdf, plain.print());
    }

    /** One after the other, so that whatever else the machine does slows both alike. */
    @Benchmark
    public int inTurn(Times times) {
        long start = System.nanoTime();
        byte[] list =
                BenchPaper.KIT_LIST.print(kit, OptionalInt.empty(), Paper.A4, Wording.ENGLISH);
        long middle = System.nanoTime();
        byte[] text = plain.print();
        times.kitListNs += middle - start;
        times.plainTextNs += System.nanoTime() - middle;
        return list.length + text.length;
    }

    /** What was spent on either, and the ratio that should stay below 2. */
    @AuxCounters(AuxCounters.Type.EVENTS)
    @State(Scope.Thread)
    public static class Times {

        public long kitListNs;
        public long plainTextNs;

        public double ratio() {
            return (double) kitListNs / plainTextNs;
        }
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
